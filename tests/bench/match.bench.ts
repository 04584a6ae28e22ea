import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { Matches } from '../../src/model/match/run.ts'
import { Roster } from '../../src/model/match/setup.ts'
import { philox } from '../../src/model/random/index.ts'
import { projectRoot } from '../../src/root.ts'
import type { BenchEntry } from './entry.ts'

const { game, options, lineups } = JSON.parse(
  readFileSync(join(projectRoot(), 'tests/reference/reference-breakwater.json'), 'utf8'),
) as { game: Game; options: Option[]; lineups: { id: string; ours: string[]; theirs: string[] }[] }

/** Six robots, about 126 legs and 322 events a match. */
export function even(): Matches {
  const lineup = lineups.find(({ id }) => id === 'even')!
  const named = (ids: readonly string[]) => ids.map((id) => options.find((option) => option.id === id)!)
  return new Matches(new Roster(game).setup(named(lineup.ours), named(lineup.theirs)), { seed: 1 })
}

const count = 10_000

const perSecond = (work: () => void): number => {
  const begin = performance.now()
  work()
  return (1000 * count) / (performance.now() - begin)
}

/** Random words of one match of this line-up: 15 blocks of four before teleop, and about 277 in it. */
const blocks = 292

/** So many draws of random words as the matches need, and nothing else; the plain form, which every engine runs. */
function drawsAlone(): number {
  const words = new Uint32Array(4)
  let sum = 0
  const rate = perSecond(() => {
    for (let match = 0; match < count; match++)
      for (let k = 0; k < blocks; k++) sum += philox([k, 0, 0, match], [1, 0], words)[0] as number
  })
  if (sum === 0) throw new Error('nothing was drawn')
  return rate
}

const single: BenchEntry = {
  name: 'match.single',
  unit: 'matches/s',
  better: 'higher',
  open: () => {
    const matches = even()
    matches.play(0, count)
    let from = count
    return {
      run: () =>
        perSecond(() => {
          matches.play(from, from + count)
          from += count
        }),
      baseline: { what: 'as many random draws', run: drawsAlone },
    }
  },
}

/** A thread that plays when it is told to. */
async function thread(): Promise<{ play(from: number): Promise<void>; end(): Promise<number> }> {
  const worker = new Worker(new URL('./match.worker.js', import.meta.url))
  const answer = async () => {
    await once(worker, 'message')
  }
  await answer()
  return {
    play: (from) => {
      worker.postMessage({ from, to: from + count })
      return answer()
    },
    end: () => worker.terminate(),
  }
}

const two: BenchEntry = {
  name: 'match.two',
  unit: 'matches/s',
  better: 'higher',
  open: async () => {
    const threads = [await thread(), await thread()]
    const both = async (from: number) => {
      const begin = performance.now()
      await Promise.all(threads.map((each, k) => each.play(from + k * count)))
      return (2 * 1000 * count) / (performance.now() - begin)
    }
    await both(0)
    let from = 2 * count
    const next = () => {
      from += 2 * count
      return from
    }
    return {
      run: () => both(next()),
      baseline: {
        what: 'one of the threads alone',
        run: async () => {
          const begin = performance.now()
          await threads[0]!.play(next())
          return (1000 * count) / (performance.now() - begin)
        },
      },
      close: async () => {
        for (const each of threads) await each.end()
      },
    }
  },
}

/** How near the whole simulation comes to what its random draws alone would take. */
const draws: BenchEntry = {
  name: 'match.draws',
  unit: 'ratio',
  better: 'higher',
  open: async () => {
    const { run, baseline } = await single.open()
    return { run: async () => (await run()) / (await baseline!.run()) }
  },
}

export default [single, draws, two]
