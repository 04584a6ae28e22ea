import { leastSquares, studentQuantile } from '../statistics/index.ts'
import type { Learning } from './types.ts'

/** With fewer runs a curve says nothing. */
const fewest = 4

/**
 * The power law of practice: ln (field / model) on ln (number of the run), each run one value that weighs as many trips as it has, so
 * that trips of one run are not taken for practice of their own.
 *
 * Source: Newell & Rosenbloom, in Anderson (ed.), Cognitive Skills and their Acquisition (1981), 1–55; the factor for twice as many:
 * Wright, Journal of the Aeronautical Sciences 3 (1936), 122–128.
 */
export function learningOf(runs: readonly { number: number; ratio: number; trips: number }[]): Learning | null {
  const usable = runs.filter(({ ratio, trips }) => ratio > 0 && trips > 0)
  if (usable.length < fewest) return null
  const { coefficients, standardErrors } = leastSquares(
    usable.map(({ number }) => [1, Math.log(number)]),
    usable.map(({ ratio }) => Math.log(ratio)),
    usable.map(({ trips }) => trips),
  )
  const [level, slope] = coefficients as [number, number]
  const half = studentQuantile(0.975, usable.length - 2) * standardErrors[1]!
  const doubling = (b: number) => 2 ** b
  return {
    doubling: doubling(slope),
    interval95: [doubling(slope - half), doubling(slope + half)],
    first: Math.exp(level),
  }
}
