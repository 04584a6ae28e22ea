/**
 * A lattice of points on which a distribution is kept: index i stands for i · unit points. Close to the buzzer, where
 * a held piece pays by the tenth of a second, a finer one is used, `ratio` times as dense.
 */
export interface Lattice {
  readonly unit: number
  readonly ratio: number
  /** Whether amounts are rounded to the lattice because they have no common measure. */
  readonly rounded: boolean
}

/** A distribution is no longer than this. */
const longest = 20_000
const densest = 50

/**
 * The coarsest lattice that holds all of `values`, refined for `late` values.
 * Values that fit none of at most 20,000 points up to `most` are rounded to one of that many: with 200 points at most,
 * each piece is then off by at most 0.005 points. (Sharing them between neighbours would keep the mean, but every way of
 * sharing is a state of its own, and would cost gigabytes.)
 */
export function latticeFor(values: readonly number[], late: readonly number[], most: number): Lattice {
  const least = Math.max(most, 1) / longest
  const common = commonDivisor(values) ?? 0
  if (common < least) return { unit: least, ratio: 1, rounded: true }
  if (late.length === 0) return { unit: common, ratio: 1, rounded: false }
  const fine = Math.max(commonDivisor([common, ...late]) ?? 0, common / densest)
  return { unit: common, ratio: Math.max(1, Math.round(common / fine)), rounded: false }
}

/** Greatest common divisor of decimal numbers (to 1e-5), or null where they have none worth the name. */
function commonDivisor(values: readonly number[]): number | null {
  const scale = 1e5
  let divisor = 0
  for (const value of values) {
    const scaled = Math.round(Math.abs(value) * scale)
    if (Math.abs(Math.abs(value) * scale - scaled) > 1e-4) return null
    divisor = gcd(scaled, divisor)
  }
  return divisor === 0 ? 1 : divisor / scale
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b)
}
