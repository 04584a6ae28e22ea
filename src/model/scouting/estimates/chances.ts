import { logGamma } from '../statistics/logGamma.ts'
import { type Grid, logNormal, picker, posteriorGrid } from './grid.ts'

export interface ChanceData {
  hits: number
  misses: number
}

/** What is believed beforehand: the event's level on the log-odds scale, and how much a team's prior is worth. */
export interface ChancePrior {
  logOdds: { mean: number; sd: number }
  strength: { median: number; spread: number }
}

/** What is believed about one chance of all teams: Beta between teams, mean and strength on a grid. */
export class Chances {
  private readonly grid: Grid
  private readonly pick: (u: number) => number

  constructor(teams: readonly ChanceData[], prior: ChancePrior) {
    const groups = alike(teams)
    const strength = { mean: Math.log(prior.strength.median), sd: prior.strength.spread }
    const { logOdds } = prior
    const all = groups.reduce((sum, { times }) => sum + times, 0)
    // The first axis moves slowly: what hangs on the strength alone is worked out once for a row.
    const row = { s: Number.NaN, sum: 0 }
    const ofStrength = (s: number) => {
      if (row.s === s) return row.sum
      row.s = s
      row.sum = all * logGamma(s)
      for (const { hits, misses, times } of groups) row.sum -= times * logGamma(s + hits + misses)
      return row.sum
    }
    this.grid = posteriorGrid(
      [
        { from: strength.mean - 2.5 * strength.sd, to: strength.mean + 3 * strength.sd, search: 9, points: 24 },
        { from: logOdds.mean - 3.5 * logOdds.sd, to: logOdds.mean + 3.5 * logOdds.sd, search: 9, points: 21 },
      ],
      (at) => {
        const s = Math.exp(at[0] as number)
        const a = s / (1 + Math.exp(-(at[1] as number)))
        const b = s - a
        const [beforeA, beforeB] = [logGamma(a), logGamma(b)]
        let sum = logNormal(at[0] as number, strength) + logNormal(at[1] as number, logOdds) + ofStrength(s)
        for (const { hits, misses, times } of groups) {
          const ofHits = hits > 0 ? logGamma(a + hits) - beforeA : 0
          const ofMisses = misses > 0 ? logGamma(b + misses) - beforeB : 0
          sum += times * (ofHits + ofMisses)
        }
        return sum
      },
    )
    this.pick = picker(this.grid)
  }

  /** Beta between teams that a uniform number stands for. */
  prior(u: number): { a: number; b: number } {
    const [strengths, odds] = this.grid.axes as [Float64Array, Float64Array]
    const k = this.pick(u)
    const s = Math.exp(strengths[Math.floor(k / odds.length)] as number)
    const a = s / (1 + Math.exp(-(odds[k % odds.length] as number)))
    return { a, b: s - a }
  }
}

/** Teams with the same numbers, once with how many they are: most of a rare thing have seen none of it. */
function alike(teams: readonly ChanceData[]): (ChanceData & { times: number })[] {
  const groups = new Map<string, ChanceData & { times: number }>()
  for (const { hits, misses } of teams) {
    if (hits + misses <= 0) continue
    const key = `${hits} ${misses}`
    const group = groups.get(key)
    if (group) group.times++
    else groups.set(key, { hits, misses, times: 1 })
  }
  return [...groups.values()]
}
