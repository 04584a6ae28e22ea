import { CholeskyDecomposition, Matrix } from 'ml-matrix'

/** A mixed model at one ratio of its variances. */
export interface AtRatio {
  /** Restricted log likelihood of the ratio, up to a constant. */
  logLikelihood: number
  /** The level, then the effects. */
  solution: number[]
  /** Residual variance, and covariance of the solution over it. */
  variance: number
  covariance: Matrix
}

/**
 * y = level + Σ of the effects named in a row + noise, effects normal with `ratio` times the noise's variance: best linear
 * unbiased predictions and the restricted likelihood of the ratio, from Henderson's equations.
 *
 * Sources: Henderson, Biometrics 31 (1975), 423–447; Patterson & Thompson, Biometrika 58 (1971), 545–554.
 */
export class MixedModel {
  readonly count: number
  readonly effects: number
  private readonly normal: Matrix
  private readonly right: number[]
  private readonly squares: number

  /** @param rows numbers of the effects in each sum; one may be named twice */
  constructor(rows: readonly (readonly number[])[], y: readonly number[], effects: number) {
    this.count = y.length
    this.effects = effects
    this.normal = Matrix.zeros(effects + 1, effects + 1)
    this.right = new Array<number>(effects + 1).fill(0)
    for (const [i, row] of rows.entries()) {
      const members = [0, ...row.map((effect) => effect + 1)]
      for (const a of members) {
        this.right[a]! += y[i] as number
        for (const b of members) this.normal.set(a, b, this.normal.get(a, b) + 1)
      }
    }
    this.squares = y.reduce((sum, value) => sum + value * value, 0)
  }

  at(ratio: number): AtRatio {
    const { effects, count } = this
    const equations = this.normal.clone()
    for (let k = 1; k <= effects; k++) equations.set(k, k, equations.get(k, k) + 1 / ratio)
    const factor = new CholeskyDecomposition(equations)
    const covariance = factor.solve(Matrix.eye(effects + 1))
    const solution = factor.solve(Matrix.columnVector(this.right)).getColumn(0)
    const left = this.squares - solution.reduce((sum, value, k) => sum + value * (this.right[k] as number), 0)
    const free = count - 1
    const determinant = factor.lowerTriangularMatrix.diagonal().reduce((sum, value) => sum + 2 * Math.log(value), 0)
    const variance = Math.max(1e-12, left / free)
    return {
      logLikelihood: -0.5 * (determinant + effects * Math.log(ratio) + free * Math.log(variance)),
      solution,
      variance,
      covariance,
    }
  }
}
