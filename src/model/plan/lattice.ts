/**
 * A lattice of points on which a distribution is kept: index i stands for i · unit points. Close to the buzzer, where
 * a held piece pays by the tenth of a second, a finer one is used, `ratio` times as dense.
 */
export interface Lattice {
  readonly unit: number
  readonly ratio: number
}

/** A distribution longer than this is put on a coarser lattice of `shared` points, its mass shared between neighbours. */
const longest = 4000
const shared = 400
const densest = 50

/**
 * The coarsest lattice that holds all of `values`, refined for `late` values.
 * Values that fit no lattice of at most 4,000 points up to `most` are shared between the neighbours on one of 400:
 * every way of sharing is a state of its own, so that more of them would cost gigabytes.
 */
export function latticeFor(values: readonly number[], late: readonly number[], most: number): Lattice {
  const top = Math.max(most, 1)
  const common = commonDivisor(values) ?? 0
  const unit = common >= top / longest ? common : top / shared
  if (late.length === 0) return { unit, ratio: 1 }
  const fine = Math.max(commonDivisor([unit, ...late]) ?? 0, unit / densest)
  const ratio = Math.round(unit / fine)
  return { unit, ratio: Math.max(1, ratio) }
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
