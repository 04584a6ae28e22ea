import { Matrix } from 'ml-matrix'

/** Largest distance of two samples' distribution functions, and how likely one at least so large is by chance. */
export interface Distance {
  distance: number
  exact: number
  asymptotic: number
}

/**
 * Two samples. The exact chance counts the orders of the pooled sample; those that equal values leave open do not count as
 * distances (as Kim & Jennrich 1973 count them for samples without equal values).
 */
export function twoSamples(a: readonly number[], b: readonly number[]): Distance {
  const [m, n] = [a.length, b.length]
  const pooled = [...a.map((x) => ({ x, own: true })), ...b.map((x) => ({ x, own: false }))].sort((p, q) => p.x - q.x)
  // After which places of the pooled order a distance is looked at: not within equal values.
  const looked = pooled.map(({ x }, i) => i === pooled.length - 1 || pooled[i + 1]!.x > x)
  let distance = 0
  let [ofA, ofB] = [0, 0]
  for (const [i, { own }] of pooled.entries()) {
    if (own) ofA++
    else ofB++
    if (looked[i]) distance = Math.max(distance, Math.abs(ofA / m - ofB / n))
  }
  // Shares of all paths through (i of a, j of b) that stay nearer than the distance.
  let row = new Float64Array(n + 1)
  const far = (i: number, j: number) =>
    i + j > 0 && looked[i + j - 1] === true && Math.abs(i / m - j / n) >= distance - 1e-12
  row[0] = 1
  for (let j = 1; j <= n; j++) row[j] = far(0, j) ? 0 : (row[j - 1] as number)
  for (let i = 1; i <= m; i++) {
    const next = new Float64Array(n + 1)
    for (let j = 0; j <= n; j++) {
      const before = (row[j] as number) * (i / (i + j)) + (j > 0 ? (next[j - 1] as number) * (j / (i + j)) : 0)
      next[j] = far(i, j) ? 0 : before
    }
    row = next
  }
  return {
    distance,
    exact: 1 - (row[n] as number),
    asymptotic: kolmogorovTail(Math.sqrt((m * n) / (m + n)) * distance),
  }
}

/** One sample against a distribution function. */
export function oneSample(values: readonly number[], cdf: (x: number) => number): Distance {
  const n = values.length
  const distance = values
    .toSorted((a, b) => a - b)
    .reduce((most, x, i) => Math.max(most, (i + 1) / n - cdf(x), cdf(x) - i / n), 0)
  return { distance, exact: 1 - belowDistance(n, distance), asymptotic: kolmogorovTail(Math.sqrt(n) * distance) }
}

/** Share beyond x of Kolmogorov's limiting distribution. */
export function kolmogorovTail(x: number): number {
  if (x < 0.2) return 1
  let sum = 0
  for (let k = 1; k <= 100; k++) sum += (k % 2 === 1 ? 2 : -2) * Math.exp(-2 * k * k * x * x)
  return Math.min(1, Math.max(0, sum))
}

/** P(D < d) of n values. Source: Marsaglia, Tsang & Wang, Journal of Statistical Software 8 (2003), issue 18. */
function belowDistance(n: number, d: number): number {
  const k = Math.floor(n * d) + 1
  const size = 2 * k - 1
  const h = k - n * d
  const matrix = Matrix.zeros(size, size)
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) if (i - j + 1 >= 0) matrix.set(i, j, 1)
  for (let i = 0; i < size; i++) {
    matrix.set(i, 0, matrix.get(i, 0) - h ** (i + 1))
    matrix.set(size - 1, i, matrix.get(size - 1, i) - h ** (size - i))
  }
  matrix.set(size - 1, 0, matrix.get(size - 1, 0) + (2 * h - 1 > 0 ? (2 * h - 1) ** size : 0))
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) for (let g = 1; g <= i - j + 1; g++) matrix.set(i, j, matrix.get(i, j) / g)
  let vector = Matrix.zeros(1, size)
  vector.set(0, k - 1, 1)
  for (let i = 1; i <= n; i++) vector = vector.mmul(matrix).mul(i / n)
  return vector.get(0, k - 1)
}
