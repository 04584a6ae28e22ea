import { Uniforms } from '../../../../src/model/random/index.ts'
import { betaCdf } from '../../../../src/model/scouting/statistics/index.ts'

/** Points at which a distribution of ranks is looked at. */
const points = 50

/** P(X ≤ k) of N tries, by point and k. */
function tables(tries: number): Float64Array[] {
  return Array.from({ length: points - 1 }, (_, i) => {
    const p = (i + 1) / points
    return Float64Array.from({ length: tries + 1 }, (_, k) => (k === tries ? 1 : 1 - betaCdf(p, k + 1, tries - k)))
  })
}

/** The least likely of all points: two-sided chance of as many values below it. */
function worst(values: readonly number[] | Float64Array, cdf: readonly Float64Array[]): number {
  const counts = new Int32Array(points)
  for (const value of values) counts[Math.min(points - 1, Math.floor(value * points))]!++
  let [below, least] = [0, 1]
  for (let i = 0; i < points - 1; i++) {
    below += counts[i] as number
    const table = cdf[i] as Float64Array
    const low = table[below] as number
    const high = below === 0 ? 1 : 1 - (table[below - 1] as number)
    least = Math.min(least, 2 * Math.min(low, high))
  }
  return least
}

/**
 * Whether shares of draws below the truth lie inside the simultaneous band of evenly spread ones, of so many quantities at once.
 *
 * Source: Säilynoja, Bürkner & Vehtari, Statistics and Computing 32 (2022), 32: the band whose points each have one level, chosen
 * by simulation so that all hold together; Bonferroni over the quantities.
 *
 * @returns by quantity how far its worst point lies within: below 1 it is outside
 */
export function insideBand(
  ranks: ReadonlyMap<string, readonly number[]>,
  { level, simulations }: { level: number; simulations: number },
): Map<string, number> {
  const tries = [...ranks.values()][0]!.length
  const cdf = tables(tries)
  const uniforms = new Uniforms(99)
  const sample = new Float64Array(tries)
  const all = Float64Array.from({ length: simulations }, () => {
    for (let i = 0; i < tries; i++) sample[i] = uniforms.next()
    return worst(sample, cdf)
  }).sort()
  const critical = all[Math.floor(((1 - level) / ranks.size) * simulations)] as number
  return new Map([...ranks].map(([name, own]) => [name, worst(own, cdf) / critical]))
}
