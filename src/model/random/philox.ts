const MULTIPLIER_A = 0xd2511f53
const MULTIPLIER_B = 0xcd9e8d57
const WEYL_A = 0x9e3779b9
const WEYL_B = 0xbb67ae85
const ROUNDS = 10

/**
 * Philox4x32-10: four random 32-bit words as a function of a counter and a key, with no state between calls. Two
 * counters or keys that differ in any bit give independent words.
 *
 * Source: Salmon, Moraes, Dror & Shaw, Parallel random numbers: as easy as 1, 2, 3 (SC'11).
 *
 * @example philox([0, 0, 0, 0], [0, 0])[0] // 0x6627e8d5
 */
export function philox(counter: ArrayLike<number>, key: ArrayLike<number>, words = new Uint32Array(4)): Uint32Array {
  let a = counter[0]! | 0
  let b = counter[1]! | 0
  let c = counter[2]! | 0
  let d = counter[3]! | 0
  let keyA = key[0]! | 0
  let keyB = key[1]! | 0
  for (let round = 0; round < ROUNDS; round++) {
    const highA = highWord(MULTIPLIER_A, a)
    const highC = highWord(MULTIPLIER_B, c)
    const lowA = Math.imul(MULTIPLIER_A, a)
    const lowC = Math.imul(MULTIPLIER_B, c)
    a = highC ^ b ^ keyA
    b = lowC
    c = highA ^ d ^ keyB
    d = lowA
    keyA = (keyA + WEYL_A) | 0
    keyB = (keyB + WEYL_B) | 0
  }
  words[0] = a
  words[1] = b
  words[2] = c
  words[3] = d
  return words
}

/** The upper 32 bits of the product of two unsigned words, from products of their halves: a double holds only 53 bits. */
function highWord(x: number, y: number): number {
  const xLow = x & 0xffff
  const xHigh = x >>> 16
  const yLow = y & 0xffff
  const yHigh = y >>> 16
  const lowest = Math.imul(xLow, yLow) >>> 0
  const middle = Math.imul(xHigh, yLow) >>> 0
  const other = Math.imul(xLow, yHigh) >>> 0
  const carry = ((lowest >>> 16) + (middle & 0xffff) + (other & 0xffff)) >>> 16
  return (Math.imul(xHigh, yHigh) + (middle >>> 16) + (other >>> 16) + carry) | 0
}
