import { type Case, standard, variants } from '../../seed/standard.ts'
import { planInParts } from '../../src/api/compute/planInParts.ts'
import { openPool } from '../../src/api/compute/pool.ts'
import type { Option, Stage } from '../../src/model/documents/types.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { type BenchEntry, milliseconds, type Opened } from './entry.ts'

const products = 50_000_000

/** What everything here is compared with: a plain loop of 50 million multiply-adds. */
function multiplyAdds(): Promise<number> {
  const numbers = new Float64Array(1000).fill(0.5)
  return milliseconds(() => {
    let sum = 0
    for (let i = 0; i < products; i++) sum += sum * 1e-9 + (numbers[i % 1000] as number)
    if (sum === 0) throw new Error('the loop was not run')
  })
}

const against = (run: Opened['run']): Opened => ({
  run,
  baseline: { what: '50 million multiply-adds', run: multiplyAdds },
})

/** The option with one stage of its first collect trip a little slower: what a drag of a bar asks for. */
function edited({ option }: Case, turn: number): Option {
  const copy = structuredClone(option)
  const trip = Object.values(copy.robot.collect)[0]
  const stage: Stage | undefined =
    trip && 'stages' in trip ? trip.stages.find(({ duration }) => duration.kind !== 'fixed') : undefined
  if (stage?.duration.kind === 'lognormal') stage.duration.median *= 1 + 0.01 * turn
  else if (stage?.duration.kind === 'range') stage.duration.high *= 1 + 0.01 * turn
  else throw new Error('the standard case has no stage to edit')
  return copy
}

/** So often a plan is made before it is measured: until then the engine compiles it anew (DEVELOPERS.md, 2026-11-27). */
const warming = 16

/** A plan of which nothing is kept, in a process that has planned before, as a server has. */
const fromNothing = ({ game, option }: Case) => milliseconds(() => new Planner(game).report(option))

async function warmed(of: Case, turns: number): Promise<void> {
  for (let turn = 0; turn < turns; turn++) await fromNothing(of)
}

const cold = (name: string): BenchEntry => ({
  name,
  unit: 'ms',
  better: 'lower',
  runs: 11,
  open: async () => {
    await warmed(standard, warming)
    return against(() => fromNothing(standard))
  },
})

/** The same of a harder case, in turn with the standard one, of which it may be ten times. */
const harder = (name: string, of: Case): BenchEntry => ({
  name,
  unit: 'ms',
  better: 'lower',
  runs: 11,
  open: async () => {
    await warmed(standard, warming)
    await warmed(of, 1)
    return { run: () => fromNothing(of), baseline: { what: 'the standard case', run: () => fromNothing(standard) } }
  },
})

const edit = (name: string, run: (planner: Planner, option: Option) => unknown): BenchEntry => ({
  name,
  unit: 'ms',
  better: 'lower',
  runs: 15,
  open: () => {
    const planner = new Planner(standard.game)
    let turn = 0
    for (; turn < 5; turn++) run(planner, edited(standard, turn))
    return against(() => {
      const option = edited(standard, turn++)
      return milliseconds(() => run(planner, option))
    })
  },
})

const entries: BenchEntry[] = [
  cold('plan.cold'),
  edit('plan.edit', (planner, option) => planner.quick(option)),
  edit('plan.rest', (planner, option) => planner.report(option)),
  {
    // As the server answers it: two threads, which keep nothing of an option that is called otherwise.
    name: 'plan.full',
    unit: 'ms',
    better: 'lower',
    open: async () => {
      const { game, option } = variants.form115
      const pool = openPool({ threads: 2 })
      let turn = 0
      const full = () =>
        planInParts(
          pool,
          { game, option: { ...option, name: `${turn++}` }, with: ['call', 'worth'] },
          new AbortController().signal,
        )
      for (let warm = 0; warm < 3; warm++) await full()
      return { ...against(() => milliseconds(full)), close: () => pool.close() }
    },
  },
  {
    name: 'plan.fullalone',
    unit: 'ms',
    better: 'lower',
    open: () => {
      const { game, option } = variants.form115
      const full = () => new Planner(game).report(option, { with: ['call', 'worth'] })
      for (let warm = 0; warm < 3; warm++) full()
      return against(() => milliseconds(full))
    },
  },
  harder('plan.capacity60', variants.capacity60),
  harder('plan.capacity12x12', variants.twoGoalsOf12),
  harder('plan.carries30', variants.carries30),
]

export default entries
