import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { request } from '../../seed/comparison.ts'
import { applyInput, type BeliefPart, beliefSize, beliefSummary } from '../../src/model/compare/index.ts'
import { Planner } from '../../src/model/plan/index.ts'
import type { Share } from './belief.worker.ts'
import { type BenchEntry, milliseconds } from './entry.ts'

function workers(count: number) {
  const filename = fileURLToPath(new URL('belief.worker.js', import.meta.url))
  return new Piscina<Share, BeliefPart>({ filename, execArgv: [], minThreads: count, maxThreads: count })
}

/** The demo season's question: 2,000 draws over 6 inputs on 2 options, cut into equal shares. */
async function believe(pool: Piscina<Share, BeliefPart>, shares: number, draws = beliefSize): Promise<BeliefPart[]> {
  const size = draws / shares
  const starts = Array.from({ length: shares }, (_, share) => share * size)
  return Promise.all(starts.map((from) => pool.run({ request, from, to: from + size })))
}

/** Time of the plans of some draws made from nothing, on the same grid, as if for all draws. */
function fromNothing(draws: number): Promise<number> {
  return milliseconds(() => {
    for (let draw = 0; draw < draws; draw++) {
      const changed = (request.inputs ?? []).reduce(
        (documents, input) =>
          applyInput(documents, input, input.low + ((input.high - input.low) * (draw + 0.5)) / draws),
        { game: request.game, options: request.options },
      )
      for (const option of changed.options) new Planner(changed.game, 0.25).value(option, { form: false })
    }
  }).then((time) => (time * beliefSize) / draws)
}

const entries: BenchEntry[] = [
  {
    name: 'belief.2000',
    unit: 'ms',
    better: 'lower',
    open: () => {
      const pool = workers(1)
      return {
        run: () => milliseconds(async () => beliefSummary(request, await believe(pool, 1))),
        baseline: { what: 'every plan from nothing (by 20 draws)', run: () => fromNothing(20) },
        close: () => pool.destroy(),
      }
    },
  },
  {
    name: 'belief.two',
    unit: 'ms',
    better: 'lower',
    open: () => {
      const pool = workers(2)
      return {
        run: () => milliseconds(async () => beliefSummary(request, await believe(pool, 2))),
        baseline: { what: 'half of the draws in one worker', run: () => milliseconds(() => believe(pool, 1, 1000)) },
        close: () => pool.destroy(),
      }
    },
  },
]

export default entries
