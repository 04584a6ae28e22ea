import { Matrix, QrDecomposition, solve } from 'ml-matrix'

export interface Fit {
  coefficients: number[]
  standardErrors: number[]
  /** Residual standard deviation on n − p degrees of freedom. */
  sd: number
  residualSquares: number
  /** About the (weighted) mean, for designs with a constant. */
  rSquared: number
}

/**
 * Least squares by orthogonal triangulation, minimising Σ w r². Columns are brought to length 1 first.
 *
 * @param rows of the design, the constant 1 included where one is wanted
 * @param weights precisions: 1 where none are given
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  weights: readonly number[] = y.map(() => 1),
): Fit {
  const [n, p] = [rows.length, (rows[0] as number[]).length]
  const root = weights.map(Math.sqrt)
  const design = new Matrix(rows.map((row, i) => row.map((x) => x * (root[i] as number))))
  const lengths = Array.from({ length: p }, (_, j) => Math.hypot(...design.getColumn(j)))
  const scaled = new Matrix(n, p)
  for (let i = 0; i < n; i++) for (let j = 0; j < p; j++) scaled.set(i, j, design.get(i, j) / (lengths[j] as number))
  const qr = new QrDecomposition(scaled)
  const target = Matrix.columnVector(y.map((value, i) => value * (root[i] as number)))
  const first = qr.solve(target)
  // Once more on what is left over: what rounding took from an ill-conditioned design comes back.
  const refined = Matrix.add(first, qr.solve(Matrix.sub(target, scaled.mmul(first))))
  const coefficients = refined.getColumn(0).map((b, j) => b / (lengths[j] as number))
  const residuals = y.map((value, i) => value - dot(rows[i] as number[], coefficients))
  const residualSquares = residuals.reduce((sum, r, i) => sum + (weights[i] as number) * r * r, 0)
  const sd = Math.sqrt(residualSquares / (n - p))
  const inverse = solve(qr.upperTriangularMatrix, Matrix.eye(p))
  const standardErrors = lengths.map((length, j) => (sd * Math.hypot(...inverse.getRow(j))) / length)
  const weight = weights.reduce((sum, w) => sum + w, 0)
  const mean = y.reduce((sum, value, i) => sum + (weights[i] as number) * value, 0) / weight
  const total = y.reduce((sum, value, i) => sum + (weights[i] as number) * (value - mean) ** 2, 0)
  return { coefficients, standardErrors, sd, residualSquares, rSquared: 1 - residualSquares / total }
}

/**
 * Ridge regression on the raw columns: Σ r² + penalty · Σ b². With `intercept` the columns are centred and the constant is
 * not penalised. (Programs that scale columns to unit spread first need another penalty for the same answer.)
 *
 * Source: Hoerl & Kennard, Technometrics 12 (1970), 55–67.
 */
export function ridge(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  { penalty, intercept }: { penalty: number; intercept: boolean },
): { coefficients: number[]; intercept: number } {
  const p = (rows[0] as number[]).length
  const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length
  const centres = Array.from({ length: p }, (_, j) => (intercept ? mean(rows.map((row) => row[j] as number)) : 0))
  const level = intercept ? mean(y) : 0
  const x = new Matrix(rows.map((row) => row.map((value, j) => value - (centres[j] as number))))
  const normal = Matrix.add(x.transpose().mmul(x), Matrix.eye(p, p, penalty))
  const right = x.transpose().mmul(Matrix.columnVector(y.map((value) => value - level)))
  const coefficients = solve(normal, right).getColumn(0)
  return { coefficients, intercept: level - dot(centres, coefficients) }
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, x, i) => sum + x * (b[i] as number), 0)
