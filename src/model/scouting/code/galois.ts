/**
 * Arithmetic of bytes in which every one but 0 can be divided by: the field GF(2^8) with x^8 + x^4 + x^3 + x + 1. Its sum
 * is the exclusive or.
 *
 * Source: FIPS 197 (AES), section 4.2, of which 3 is a generator.
 */
const exponentials = new Uint8Array(510)
const logarithms = new Uint8Array(256)

for (let power = 0, value = 1; power < 255; power++) {
  exponentials[power] = value
  exponentials[power + 255] = value
  logarithms[value] = power
  const doubled = value << 1
  value ^= doubled & 256 ? doubled ^ 0x11b : doubled
}

/** @example product(0x57, 0x83) // 0xc1 */
export function product(a: number, b: number): number {
  return a === 0 || b === 0 ? 0 : exponentials[logarithms[a]! + logarithms[b]!]!
}

/** The byte whose product with `a` is 1; `a` is not 0. */
export const inverse = (a: number): number => exponentials[255 - logarithms[a]!]!

/** Adds `factor` times the bytes of `from` to those of `to`. */
export function addTimes(to: Uint8Array, from: Uint8Array, factor: number): void {
  if (factor === 0) return
  const log = logarithms[factor]!
  for (let index = 0; index < from.length; index++) {
    const byte = from[index]!
    if (byte !== 0) to[index] = to[index]! ^ exponentials[log + logarithms[byte]!]!
  }
}
