import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addTimes, inverse, product } from '../../../src/model/scouting/code/galois.ts'
import {
  Collector,
  crc32,
  framesOf,
  fromBase45,
  messageOf,
  readMessage,
  stillFrame,
  toBase45,
} from '../../../src/model/scouting/code/index.ts'
import { readMoment, writeMoment } from '../../../src/model/scouting/code/moment.ts'

const bytes = (text: string) => new TextEncoder().encode(text)

test('the check sum has the published value', () => {
  // The check value of CRC-32/ISO-HDLC in the catalogue of CRC algorithms (from memory), as in zip's and PNG's test vectors.
  expect(crc32(bytes('123456789'))).toBe(0xcbf43926)
  expect(crc32(bytes(''))).toBe(0)
})

describe('letters for a code', () => {
  // RFC 9285, sections 4.3 and 4.4.
  test.each([
    ['AB', 'BB8'],
    ['Hello!!', '%69 VD92EX0'],
    ['base-45', 'UJCLQE7W581'],
    ['ietf!', 'QED8WEX0'],
  ])('%s is written %s, as the standard has it', (plain, letters) => {
    expect(toBase45(bytes(plain))).toBe(letters)
    expect(fromBase45(letters)).toEqual(bytes(plain))
  })

  // RFC 9285, section 6: GGW is 65535, GGX and above are refused.
  test('what is no text of it is refused', () => {
    expect(fromBase45('FGW')).toEqual(Uint8Array.from([255, 255]))
    for (const wrong of ['GGW', ':::', 'A', 'ABCD', 'ab0', 'http://x'])
      expect(() => fromBase45(wrong)).toThrow('not a code')
  })
})

test('bytes are multiplied as the standard of AES has it', () => {
  // FIPS 197, 4.2 and 4.2.1.
  expect(product(0x57, 0x83)).toBe(0xc1)
  expect(product(0x57, 0x13)).toBe(0xfe)
  for (let byte = 1; byte < 256; byte++) expect(product(byte, inverse(byte))).toBe(1)
  const sum = Uint8Array.from([1, 0x57])
  addTimes(sum, Uint8Array.from([0, 0x57]), 0x83)
  expect([...sum]).toEqual([1, 0x57 ^ 0xc1])
})

test('moments are those of the calendar', () => {
  const moments = fc.date({ min: new Date('1970-01-01'), max: new Date('9999-01-01'), noInvalidDate: true })
  fc.assert(
    fc.property(moments, (at) => {
      expect(writeMoment(at.getTime())).toBe(at.toISOString())
      expect(readMoment(at.toISOString())).toBe(at.getTime())
    }),
  )
  for (const odd of [
    '2026-02-30T10:00:00.000Z',
    '2026-11-27T24:00:00.000Z',
    '2026-11-27T10:00:00Z',
    '1969-12-31T23:59:59.999Z',
  ])
    expect(readMoment(odd)).toBeNull()
})

const message = (length: number) => Uint8Array.from({ length }, (_, index) => (index * index * 7 + index) % 256)

/** Shows frames in this order; the message, and how many frames it took. */
function shown(frames: { frame(index: number): string }, order: Iterable<number>) {
  const collector = new Collector()
  let taken = 0
  for (const index of order) {
    taken++
    const { message } = collector.add(frames.frame(index))
    if (message) return { message, taken }
  }
  return { message: null, taken }
}

const from = function* (start: number, misses: (index: number) => boolean) {
  for (let index = start; ; index++) if (!misses(index)) yield index
}

describe('frames', () => {
  test('of one code hold the message', () => {
    const still = new Collector().add(stillFrame(message(290)))
    expect(still).toMatchObject({ fresh: true, have: 1, needed: 1, message: message(290) })
    // 300 bytes and what is around them.
    expect(fromBase45(stillFrame(message(294))).length).toBe(300)
  })

  test('of several are at most 500 bytes each', () => {
    for (const length of [1, 480, 500, 5000, 60_000]) {
      const sequence = framesOf(message(length))
      for (const index of [0, sequence.needed - 1, sequence.needed, 9999])
        expect(fromBase45(sequence.frame(index)).length).toBeLessThanOrEqual(500)
    }
  })

  test('that were all seen need no further one', () => {
    expect(
      shown(
        framesOf(message(5000)),
        from(0, () => false),
      ),
    ).toEqual({ message: message(5000), taken: 11 })
  })

  test('from anywhere and with every third one missed are as many as are needed, or hardly more', () => {
    const sequence = framesOf(message(5000))
    const taken = Array.from({ length: 20 }, (_, start) => {
      const found = shown(
        sequence,
        from(start, (index) => index % 3 === 1),
      )
      expect(crc32(found.message!)).toBe(crc32(message(5000)))
      return found.taken
    })
    expect(Math.min(...taken)).toBe(11)
    // A mixture says nothing new once in 255 times at the end, so hardly ever one more in twenty.
    expect(taken.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(20 * 11 + 3)
  })

  test('in any order and of any length give the message', () => {
    const seen = fc.tuple(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 40, max: 500 }), fc.array(fc.nat(400)))
    fc.assert(
      fc.property(seen, ([length, size, order]) => {
        const { message: found } = shown(framesOf(message(length), size), [
          ...order,
          ...Array.from({ length: 500 }, (_, i) => i),
        ])
        expect([found!.length, crc32(found!)]).toEqual([length, crc32(message(length))])
      }),
      { numRuns: 20 },
    )
  })

  test('of two phones in turn do not mix, and one that was seen before says nothing new', () => {
    const collector = new Collector()
    const [one, two] = [framesOf(message(900)), framesOf(message(901))]
    expect(collector.add(one.frame(0))).toMatchObject({ fresh: true, have: 1, needed: 2, parts: [true, false] })
    expect(collector.add(two.frame(1))).toMatchObject({ fresh: true, have: 1, parts: [false, true] })
    expect(collector.add(one.frame(0))).toMatchObject({ fresh: false, have: 1, message: null })
    expect(collector.add(one.frame(7)).message).toEqual(message(900))
    expect(collector.add(one.frame(8))).toMatchObject({ fresh: false, have: 2, message: null })
    expect(collector.add(two.frame(0)).message).toEqual(message(901))
  })

  test('with a wrong letter, of something else, or of a later version are refused, each in its words', () => {
    const collector = new Collector()
    const text = framesOf(message(900)).frame(0)
    expect(() => collector.add(`${text.slice(0, 30)}${text[30] === 'A' ? 'B' : 'A'}${text.slice(31)}`)).toThrow(
      /read whole/,
    )
    expect(() => collector.add('HTTPS://EXAMPLE.ORG/')).toThrow('not a code')
    expect(() => collector.add('')).toThrow('not a code')
    const later = fromBase45(text).slice(0, -4)
    later[1] = later[1]! + 16
    const sum = crc32(later)
    const closed = Uint8Array.from([...later, sum >>> 24, (sum >> 16) & 255, (sum >> 8) & 255, sum & 255])
    expect(() => collector.add(toBase45(closed))).toThrow('newer version')
  })
})

test('a message holds rows or a pack', () => {
  const rows = [message(3), message(0), message(300)]
  expect(readMessage(messageOf({ what: 'rows', rows }))).toEqual({ what: 'rows', rows })
  expect(readMessage(messageOf({ what: 'pack', deflated: message(9) }))).toEqual({ what: 'pack', deflated: message(9) })
  expect(() => readMessage(Uint8Array.from([0x20]))).toThrow('newer version')
  expect(() => readMessage(Uint8Array.from([0x10, 5, 1]))).toThrow('not read whole')
})
