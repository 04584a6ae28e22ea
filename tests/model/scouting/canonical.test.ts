import fc from 'fast-check'
import { expect, test } from 'vitest'
import { canonicalJson } from '../../../src/model/scouting/index.ts'

type Json = null | boolean | number | string | Json[] | { [key: string]: Json }

/** Another way to the same: objects as lists of pairs in their order, written by the engine. */
function byPairs(value: Json): string {
  if (Array.isArray(value)) return `[${value.map(byPairs).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const pairs = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${pairs.map(([key, field]) => `${JSON.stringify(key)}:${byPairs(field)}`).join(',')}}`
}

const names = fc.oneof(
  fc.constantFrom('a', 'b', '10', '9', 'a\u0000b', '\u0000', '', 'é', '"'),
  fc.string({ unit: 'binary' }),
)
const { tree } = fc.letrec<{ tree: Json }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 },
    fc.oneof(fc.string({ unit: 'binary' }), fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer()),
    fc.constantFrom<Json>(null, true, false, -0, 1e21, 5e-324, '\u2028', '\ud800', '\\', '\u007f'),
    fc.array(tie('tree')),
    fc.dictionary(names, tie('tree')),
  ),
}))

test('The text has keys in order, no spaces, and reads back as the same value', () => {
  fc.assert(
    fc.property(tree, (value) => {
      const text = canonicalJson(value)
      expect(text).toBe(byPairs(value))
      expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)))
    }),
  )
})

test('The order in which fields were written does not matter, nor fields without a value', () => {
  expect(canonicalJson({ b: 1, a: { d: [], c: 'x' } })).toBe('{"a":{"c":"x","d":[]},"b":1}')
  expect(canonicalJson({ a: { c: 'x', d: [] }, z: undefined, b: 1 })).toBe('{"a":{"c":"x","d":[]},"b":1}')
})

// RFC 8785, section 3.2.3: names are sorted by their UTF-16 units, so the smiling face (a pair of surrogates) comes before the Hebrew letter.
test('Names of other scripts come in the order of the standard’s example', () => {
  const value = { '\u20ac': 1, '\r': 2, '\ufb33': 3, '1': 4, '\ud83d\ude00': 5, '\u0080': 6, '\u00f6': 7 }
  const order = ['\r', '1', '\u0080', '\u00f6', '\u20ac', '\ud83d\ude00', '\ufb33']
  expect(Object.keys(JSON.parse(canonicalJson(value))).filter((name) => name !== '1')).toEqual(
    order.filter((name) => name !== '1'),
  )
  expect(canonicalJson(value)).toBe(
    `{${order.map((name) => `${JSON.stringify(name)}:${value[name as keyof typeof value]}`).join(',')}}`,
  )
})
