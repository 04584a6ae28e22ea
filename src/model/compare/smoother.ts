import { CholeskyDecomposition, EigenvalueDecomposition, Matrix } from 'ml-matrix'

const intervals = 20
const size = intervals + 3
/** Smoothing parameters tried, as powers of ten relative to data and penalty of equal weight. */
const exponents = Array.from({ length: 57 }, (_, i) => -6 + i / 4)
/** Keeps coefficients without data tied to their neighbours. */
const least = 1e-9
/** Weight of a degree of freedom in cross-validation: 1.4 keeps GCV from following noise (Kim & Gu 2004). */
const caution = 1.4

/** What a fit needs to know of a set of draws. Sets add up and can be taken away. */
export interface Moments {
  count: number
  gram: Matrix
  /** Per response: basis times response, sum and sum of squares. */
  cross: { product: Float64Array; sum: number; squares: number }[]
}

/** A fitted curve. */
export interface Curve {
  at(x: number): number
  /** Whether a constant describes the draws as well by Schwarz's criterion: the input explains nothing. */
  flat: boolean
  freedom: number
}

/** Uniform cubic B-spline: the four basis values at u in [0, 1] of an interval. */
function cubic(u: number): [number, number, number, number] {
  const v = 1 - u
  return [(v * v * v) / 6, (3 * u * u * u - 6 * u * u + 4) / 6, (3 * v * v * v - 6 * v * v + 4) / 6, (u * u * u) / 6]
}

/** Penalty on second differences of neighbouring coefficients: a straight line costs nothing. */
const penalty = (() => {
  const differences = Matrix.zeros(size - 2, size)
  for (let i = 0; i < size - 2; i++) {
    differences.set(i, i, 1)
    differences.set(i, i + 1, -2)
    differences.set(i, i + 2, 1)
  }
  return differences.transpose().mmul(differences)
})()

/**
 * Penalised cubic regression splines of several responses on one variable: cubic B-splines on 20 equal intervals, a
 * penalty on second differences, the smoothing parameter by generalised cross-validation, each response its own.
 *
 * Sources: Eilers & Marx, Statistical Science 11 (1996); use for the value of information: Strong, Oakley & Brennan,
 * Medical Decision Making 34 (2014).
 */
export class Smoother {
  readonly #low: number
  readonly #width: number

  constructor(values: readonly number[]) {
    this.#low = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
    const high = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
    this.#width = (high - this.#low) / intervals
  }

  /** Sums over the draws with these values and responses (one list a response). */
  moments(values: readonly number[], responses: readonly (readonly number[])[]): Moments {
    const gram = Matrix.zeros(size, size)
    const cross = responses.map(() => ({ product: new Float64Array(size), sum: 0, squares: 0 }))
    values.forEach((value, draw) => {
      const { first, basis } = this.#basis(value)
      for (let i = 0; i < 4; i++)
        for (let j = 0; j < 4; j++) {
          gram.set(first + i, first + j, gram.get(first + i, first + j) + (basis[i] as number) * (basis[j] as number))
        }
      cross.forEach((sums, response) => {
        const y = (responses[response] as readonly number[])[draw] as number
        sums.sum += y
        sums.squares += y * y
        for (let i = 0; i < 4; i++)
          sums.product[first + i] = (sums.product[first + i] as number) + (basis[i] as number) * y
      })
    })
    return { count: values.length, gram, cross }
  }

  /** One curve a response. */
  fit({ count, gram, cross }: Moments): Curve[] {
    const scale = gram.trace() / penalty.trace()
    const roughness = Matrix.mul(penalty, scale)
    const lower = new CholeskyDecomposition(Matrix.add(gram, Matrix.mul(roughness, least))).lowerTriangularMatrix
    const inverse = inverseOfLower(lower)
    // In the basis that turns the data into the identity and the penalty into a diagonal (Demmler & Reinsch), every
    // smoothing parameter costs a sum.
    const turned = inverse.mmul(roughness).mmul(inverse.transpose())
    const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(turned, { assumeSymmetric: true })
    const toBasis = inverse.transpose().mmul(eigenvectorMatrix)
    const rough = realEigenvalues.map((value) => Math.max(0, value))

    return cross.map(({ product, sum, squares }) => {
      const center = sum / count
      // The basis adds up to 1 everywhere, so its product with 1 is the Gram matrix's row sums.
      const centred = Float64Array.from(product, (value, i) => value - center * rowSum(gram, i))
      const total = Math.max(0, squares - count * center * center)
      const along = toBasis
        .transpose()
        .mmul(Matrix.columnVector(Array.from(centred)))
        .to1DArray()
      const chosen = crossValidated({ along, rough, total, count })
      const coefficients = toBasis
        .mmul(Matrix.columnVector(along.map((value, i) => value / (1 + chosen.smoothing * (rough[i] as number)))))
        .to1DArray()
      return {
        at: (x) => {
          const { first, basis } = this.#basis(x)
          return basis.reduce((value, weight, i) => value + weight * (coefficients[first + i] as number), center)
        },
        flat: schwarz(chosen.residual, chosen.freedom, count) >= schwarz(total, 1, count),
        freedom: chosen.freedom,
      }
    })
  }

  #basis(value: number) {
    const place = this.#width > 0 ? (value - this.#low) / this.#width : 0
    const first = Math.min(intervals - 1, Math.max(0, Math.floor(place)))
    return { first, basis: cubic(Math.min(1, Math.max(0, place - first))) }
  }
}

/** Moments of all sets together. */
export function addMoments(sets: readonly Moments[]): Moments {
  const [first, ...others] = sets as [Moments, ...Moments[]]
  return others.reduce(
    (sum, set) => ({
      count: sum.count + set.count,
      gram: Matrix.add(sum.gram, set.gram),
      cross: sum.cross.map((own, i) => {
        const other = set.cross[i] as Moments['cross'][number]
        return {
          product: own.product.map((value, k) => value + (other.product[k] as number)),
          sum: own.sum + other.sum,
          squares: own.squares + other.squares,
        }
      }),
    }),
    first,
  )
}

/** The smoothing parameter with the least n · RSS / (n − 1.4 edf)². */
function crossValidated(of: { along: number[]; rough: number[]; total: number; count: number }) {
  const { along, rough, total, count } = of
  let chosen = { smoothing: 0, freedom: 0, residual: 0 }
  let leastScore = Number.POSITIVE_INFINITY
  for (const exponent of exponents) {
    const smoothing = 10 ** exponent
    let freedom = 0
    let residual = total
    along.forEach((value, i) => {
      const shrink = 1 / (1 + smoothing * (rough[i] as number))
      const data = 1 - least * (rough[i] as number)
      freedom += data * shrink
      residual += value * value * shrink * (data * shrink - 2)
    })
    residual = Math.max(0, residual)
    const score = (count * residual) / (count - caution * freedom) ** 2
    if (score < leastScore && count > caution * freedom) {
      leastScore = score
      chosen = { smoothing, freedom, residual }
    }
  }
  return chosen
}

/** Schwarz's criterion: n ln(RSS / n) + edf · ln n; the smaller describes better. */
function schwarz(residual: number, freedom: number, count: number): number {
  return residual > 0 ? count * Math.log(residual / count) + freedom * Math.log(count) : Number.NEGATIVE_INFINITY
}

function rowSum(matrix: Matrix, row: number): number {
  let sum = 0
  for (let j = 0; j < matrix.columns; j++) sum += matrix.get(row, j)
  return sum
}

function inverseOfLower(lower: Matrix): Matrix {
  const inverse = Matrix.zeros(size, size)
  for (let column = 0; column < size; column++) {
    for (let row = column; row < size; row++) {
      let sum = row === column ? 1 : 0
      for (let k = column; k < row; k++) sum -= lower.get(row, k) * inverse.get(k, column)
      inverse.set(row, column, sum / lower.get(row, row))
    }
  }
  return inverse
}
