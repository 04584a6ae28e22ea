import { logGamma } from '../statistics/logGamma.ts'
import { cellPicker, type Grid, logNormal, posteriorGrid } from './grid.ts'
import type { Named } from './pool.ts'

export interface SharePrior {
  /** How much a team's prior is worth, in what is counted. */
  strength: { median: number; spread: number }
  /** Counts of each category that are believed of the event's shares beforehand. */
  base: number
}

/**
 * What is believed about shares of all teams: Dirichlet between teams, its strength on a grid. The event's own shares at a
 * strength s are a Dirichlet, to which a team with n counts adds n (s + 1) / (s + n), as much as its shares tell about them.
 */
export class Shares {
  readonly categories: number
  private readonly grid: Grid
  private readonly pick: ReturnType<typeof cellPicker>
  private readonly bases: Float64Array[]

  /** @param teams counts by category; fractions where several records are averaged */
  constructor(categories: number, teams: readonly Float64Array[], { strength, base }: SharePrior) {
    this.categories = categories
    const seen = teams.map((counts) => ({ counts, n: sumOf(counts) })).filter(({ n }) => n > 0)
    const baseAt = (s: number) => {
      const alpha = new Float64Array(categories).fill(base)
      for (const { counts, n } of seen) {
        const worth = (s + 1) / (s + n)
        for (let k = 0; k < categories; k++) alpha[k]! += worth * (counts[k] as number)
      }
      return alpha
    }
    const log = { mean: Math.log(strength.median), sd: strength.spread }
    // Of the event's shares that are not fixed by the others.
    const used = Math.max(
      1,
      Array.from({ length: categories }, (_, k) => seen.some(({ counts }) => counts[k]! > 0)).filter(Boolean).length,
    )
    this.grid = posteriorGrid(
      [{ from: log.mean - 4 * log.sd, to: log.mean + 4 * log.sd, search: 9, points: 24 }],
      ([x]) => {
        const s = Math.exp(x as number)
        const alpha = baseAt(s)
        const all = sumOf(alpha)
        let sum = logNormal(x as number, log) + seen.length * logGamma(s)
        for (let k = 0; k < categories; k++) {
          const own = (s * (alpha[k] as number)) / all
          const before = logGamma(own)
          for (const { counts } of seen) {
            const count = counts[k] as number
            if (count > 0) sum += logGamma(own + count) - before
          }
        }
        for (const { n } of seen) sum -= logGamma(s + n)
        // The event's shares are integrated out and not put where they fit best, which would make teams look too alike (Laplace).
        return sum - 0.5 * (used - 1) * Math.log(all)
      },
    )
    this.pick = cellPicker(this.grid)
    this.bases = Array.from(this.grid.axes[0] as Float64Array, (x) => baseAt(Math.exp(x)))
  }

  /**
   * Strength that a uniform number stands for, and draw `draw` of the event's shares times it.
   * @param of random numbers by category, the event's own
   */
  prior(u: number, of: readonly Named[], draw: number): Float64Array {
    const { cell, within } = this.pick(u)
    const axis = this.grid.axes[0] as Float64Array
    const step = (axis[1] as number) - (axis[0] as number)
    const s = Math.exp((axis[cell] as number) + (within[0] - 0.5) * step)
    const shares = dirichlet(this.bases[cell] as Float64Array, of, draw)
    for (let c = 0; c < shares.length; c++) shares[c] = Math.max(1e-9, s * (shares[c] as number))
    return shares
  }
}

export const sumOf = (values: ArrayLike<number>): number => {
  let sum = 0
  for (let k = 0; k < values.length; k++) sum += values[k] as number
  return sum
}

/** Draw `draw` of shares with these counts. */
export function dirichlet(alpha: ArrayLike<number>, of: readonly Named[], draw: number): Float64Array {
  const shares = new Float64Array(alpha.length)
  let sum = 0
  for (let k = 0; k < shares.length; k++) sum += shares[k] = (of[k] as Named).gamma(draw, alpha[k] as number)
  for (let k = 0; k < shares.length; k++) shares[k] = sum > 0 ? (shares[k] as number) / sum : 1 / shares.length
  return shares
}
