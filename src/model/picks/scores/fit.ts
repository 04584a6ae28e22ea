import { Matrix, solve } from 'ml-matrix'

/** Sums of a regression, so that fits of parts and of all but a part cost one pass. */
export class Sums {
  readonly size: number
  private readonly squares: Float64Array
  private readonly products: Float64Array

  constructor(size: number) {
    this.size = size
    this.squares = new Float64Array(size * size)
    this.products = new Float64Array(size)
  }

  add(row: ArrayLike<number>, value: number): void {
    const { size, squares, products } = this
    for (let i = 0; i < size; i++) {
      const own = row[i] as number
      products[i] = (products[i] as number) + own * value
      for (let j = 0; j < size; j++)
        squares[i * size + j] = (squares[i * size + j] as number) + own * (row[j] as number)
    }
  }

  /** These sums with others added (1) or taken away (−1). */
  with(other: Sums, sign: 1 | -1): Sums {
    const both = new Sums(this.size)
    both.squares.set(this.squares.map((own, k) => own + sign * (other.squares[k] as number)))
    both.products.set(this.products.map((own, k) => own + sign * (other.products[k] as number)))
    return both
  }

  /**
   * Coefficients of least squares. A column that says nothing beyond the others gets none: it is left out where what is
   * left of it after the constant is nothing.
   */
  coefficients(): Float64Array {
    const { size, squares, products } = this
    const count = squares[0] as number
    const kept = Array.from({ length: size }, (_, j) => j).filter((j) => {
      const mean = (squares[j] as number) / count
      return (
        j === 0 || (squares[j * size + j] as number) - count * mean * mean > 1e-9 * (squares[j * size + j] as number)
      )
    })
    const system = new Matrix(
      kept.map((i) => kept.map((j) => (squares[i * size + j] as number) * (i === j ? 1 + 1e-10 : 1))),
    )
    const found = solve(system, Matrix.columnVector(kept.map((i) => products[i] as number))).getColumn(0)
    const coefficients = new Float64Array(size)
    for (const [k, j] of kept.entries()) coefficients[j] = found[k] as number
    return coefficients
  }
}
