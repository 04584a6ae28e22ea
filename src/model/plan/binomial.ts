/** P(Bin(n, success) = k) for k = 0 … n, by adding one trial at a time. */
export function binomial(n: number, success: number): Float64Array {
  const out = new Float64Array(n + 1)
  out[0] = 1
  for (let trial = 1; trial <= n; trial++)
    for (let k = trial; k >= 0; k--)
      out[k] = (out[k] as number) * (1 - success) + (k > 0 ? (out[k - 1] as number) * success : 0)
  return out
}

/** P(Bin(n, success) < room): the chance that a piece thrown after n others still finds room. */
export function roomLeft(n: number, success: number, room: number): number {
  if (n < room) return 1
  if (room === 0) return 0
  // Term by term from (1 − success)^n; where that is 0, every trial succeeds and no room is left.
  let term = (1 - success) ** n
  let sum = term
  for (let k = 0; k + 1 < room; k++) {
    term = success < 1 ? (term * (n - k) * success) / ((k + 1) * (1 - success)) : 0
    sum += term
  }
  return sum
}
