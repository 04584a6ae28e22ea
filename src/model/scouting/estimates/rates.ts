import { logGamma } from '../statistics/logGamma.ts'
import { type Grid, logNormal, picker, posteriorGrid } from './grid.ts'
import { hyperpriors } from './settings.ts'

/** A team's count and exposure (matches), both divided by the dispersion and weighted. */
export interface RateData {
  count: number
  exposure: number
}

/** What is believed about the rates of all teams of an event: Gamma between teams, shape and mean on a grid. */
export class Rates {
  private readonly grid: Grid
  private readonly pick: (u: number) => number
  /** By cell of the grid. */
  private readonly shapes: Float64Array
  private readonly rates: Float64Array

  constructor(teams: readonly RateData[]) {
    const seen = teams.filter(({ exposure }) => exposure > 0)
    const { shape, mean } = hyperpriors.attempts
    const logShape = { mean: Math.log(shape.median), sd: shape.spread }
    const logMean = { mean: Math.log(mean.median), sd: mean.spread }
    // The first axis moves slowly: what hangs on the shape alone is worked out once for a row.
    const row = { a: Number.NaN, sum: 0 }
    const ofShape = (a: number) => {
      if (row.a === a) return row.sum
      row.a = a
      row.sum = -seen.length * logGamma(a)
      for (const { count } of seen) row.sum += logGamma(a + count)
      return row.sum
    }
    this.grid = posteriorGrid(
      [
        { from: logShape.mean - 3 * shape.spread, to: logShape.mean + 3.5 * shape.spread, search: 9, points: 24 },
        { from: logMean.mean - 3 * mean.spread, to: logMean.mean + 2.5 * mean.spread, search: 9, points: 21 },
      ],
      (at) => {
        const a = Math.exp(at[0] as number)
        const rate = a / Math.exp(at[1] as number)
        let sum = logNormal(at[0] as number, logShape) + logNormal(at[1] as number, logMean) + ofShape(a)
        sum += seen.length * a * Math.log(rate)
        for (const { count, exposure } of seen) sum -= (a + count) * Math.log(rate + exposure)
        return sum
      },
    )
    this.pick = picker(this.grid)
    const [shapes, means] = this.grid.axes.map((axis) => axis.map(Math.exp)) as [Float64Array, Float64Array]
    this.shapes = this.grid.weights.map((_, k) => shapes[Math.floor(k / means.length)] as number)
    this.rates = this.shapes.map((own, k) => own / (means[k % means.length] as number))
  }

  /** Shape and rate of the Gamma between teams that a uniform number stands for. */
  prior(u: number): { shape: number; rate: number } {
    const k = this.pick(u)
    return { shape: this.shapes[k] as number, rate: this.rates[k] as number }
  }

  /** Expected rate of a team with its variance, and the share of its own data in it. */
  mean({ count, exposure }: RateData): { mean: number; variance: number; ownWeight: number } {
    const { weights } = this.grid
    let [mean, square, ownWeight] = [0, 0, 0]
    for (let k = 0; k < weights.length; k++) {
      const weight = weights[k] as number
      const rate = (this.rates[k] as number) + exposure
      const own = ((this.shapes[k] as number) + count) / rate
      mean += weight * own
      square += weight * own * (own + 1 / rate)
      ownWeight += (weight * exposure) / rate
    }
    return { mean, variance: square - mean * mean, ownWeight }
  }
}
