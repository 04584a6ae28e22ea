import { expect, test } from 'vitest'
import { philox } from '../../../src/model/random/index.ts'

// checks.md 8.4: known-answer vectors of the generator's authors (Salmon, Moraes, Dror & Shaw, SC'11), bit for bit.
const ones = 0xffffffff
const known = [
  { counter: [0, 0, 0, 0], key: [0, 0], words: [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8] },
  { counter: [ones, ones, ones, ones], key: [ones, ones], words: [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd] },
  {
    counter: [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
    key: [0xa4093822, 0x299f31d0],
    words: [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1],
  },
]

test.each(known)('the words for counter $counter are those that the authors of the generator print', (row) => {
  expect([...philox(row.counter, row.key)]).toEqual(row.words)
})

test('one bit of counter or key changes about half of the 128 bits', () => {
  const plain = philox([1, 2, 3, 4], [5, 6])
  const changed = [...Array(192).keys()].map((bit) => {
    const input = [1, 2, 3, 4, 5, 6]
    input[bit >> 5]! ^= 1 << (bit & 31)
    const words = philox(input.slice(0, 4), input.slice(4))
    return [...words].reduce(
      (sum, word, i) => sum + ((word ^ plain[i]!) >>> 0).toString(2).replaceAll('0', '').length,
      0,
    )
  })
  // 64 ± 6 standard deviations of 128 fair bits: √32.
  for (const count of changed) expect(Math.abs(count - 64)).toBeLessThan(6 * Math.sqrt(32))
  expect(Math.abs(changed.reduce((a, b) => a + b) / 192 - 64)).toBeLessThan((4 * Math.sqrt(32)) / Math.sqrt(192))
})
