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
    const seen = teams.filter(({ hits, misses }) => hits + misses > 0)
    // Each number once with how often it is there: whole ones are few, and what they say of a cell costs the same once or often.
    const ofHits = tallied(seen.map(({ hits }) => hits))
    const ofMisses = tallied(seen.map(({ misses }) => misses))
    const ofAll = tallied(seen.map(({ hits, misses }) => hits + misses))
    const strength = { mean: Math.log(prior.strength.median), sd: prior.strength.spread }
    const { logOdds } = prior
    // The first axis moves slowly: what hangs on the strength alone is worked out once for a row.
    const row = { s: Number.NaN, sum: 0 }
    const ofStrength = (s: number) => {
      if (row.s === s) return row.sum
      row.s = s
      row.sum = -rising(s, ofAll)
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
        const before = logNormal(at[0] as number, strength) + logNormal(at[1] as number, logOdds)
        return before + ofStrength(s) + rising(a, ofHits) + rising(b, ofMisses)
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

/** Numbers above 0 in turn with how often each is there. */
function tallied(numbers: readonly number[]): Float64Array {
  const times = new Map<number, number>()
  for (const n of numbers) if (n > 0) times.set(n, (times.get(n) ?? 0) + 1)
  return Float64Array.from([...times].flat())
}

/** Sum of ln Γ(a + n) − ln Γ(a) over tallied numbers n. */
function rising(a: number, tally: Float64Array): number {
  const before = logGamma(a)
  let sum = 0
  for (let k = 0; k < tally.length; k += 2)
    sum += (tally[k + 1] as number) * (logGamma(a + (tally[k] as number)) - before)
  return sum
}
