const halfLogTwoPi = 0.5 * Math.log(2 * Math.PI)

/**
 * ln Γ(x) for x > 0, within 1e-13 of its size or absolutely near its roots. Small arguments are moved up to 9 by the
 * recurrence. Grids of hyperparameters ask for some hundred thousand values, for which a library takes several times as long.
 *
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 6.1.41 and 6.1.15.
 */
export function logGamma(x: number): number {
  let product = 1
  while (x < 9) {
    product *= x
    x += 1
  }
  const inverse = 1 / x
  const square = inverse * inverse
  // Stirling's series: B(2k) / (2k (2k − 1)).
  const late = square * (1 / 1188 - square * (691 / 360360))
  const tail = inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - late))))
  const stirling = (x - 0.5) * Math.log(x) - x + halfLogTwoPi + tail
  return product === 1 ? stirling : stirling - Math.log(product)
}

/** ln B(a, b). */
export const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b)

/** ln of the number of ways to choose k of n; both may be fractions. */
export const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1)
