import type { BeliefReport, CompareRequest } from '../../src/model/compare/types.ts'
import { words } from '../words/catalogue.ts'
import { askModel } from './client.ts'

const draws = 2000
const halves = [
  { from: 0, to: draws / 2 },
  { from: draws / 2, to: draws },
]

/**
 * What belief about all inputs says, drawn by two workers at once: the same numbers as by one.
 * Stopped by the signal; `progress` from 0 to 1.
 */
export async function computeBelief(
  request: CompareRequest,
  options: { signal: AbortSignal; progress(share: number): void },
): Promise<BeliefReport> {
  for (const step of [0.25, 0.1] as const) {
    const shares = halves.map(() => 0)
    const parts = await Promise.all(
      halves.map((half, index) =>
        askModel(
          'beliefPart',
          { request, part: { ...half, step } },
          {
            signal: options.signal,
            asked: true,
            progress: (done, total) => {
              shares[index] = done / total
              options.progress(shares.reduce((sum, share) => sum + share, 0) / shares.length)
            },
          },
        ),
      ),
    )
    const report = await askModel('beliefSummary', { request, parts }, { signal: options.signal, asked: true })
    if (report) return report
  }
  throw new Error(words().worker.notJoined)
}
