import { expect, test } from 'vitest'
import { de } from '../../../web/stands/words/de.ts'
import { en } from '../../../web/stands/words/en.ts'

/** Every text with its place; of a function, what it says of 2, 3, … or of the same as a text. */
function leaves(part: unknown, place = ''): [string, string][] {
  if (typeof part === 'string') return [[place, part]]
  if (typeof part === 'function') {
    return [[place, String(part(...Array.from({ length: part.length }, (_, index) => index + 2)))]]
  }
  return Object.entries(part as object).flatMap(([key, inner]) => leaves(inner, `${place}.${key}`))
}

const [english, german] = [new Map(leaves(en)), new Map(leaves(de))]

test('the stands’ two catalogues have the same texts, none of them empty', () => {
  expect(english.size).toBeGreaterThan(150)
  expect([...german.keys()].sort()).toEqual([...english.keys()].sort())
  expect([...german].filter(([, text]) => text.trim() === '')).toEqual([])
})

test('they say something else in German wherever there is more than a word, and hold the same numbers', () => {
  const digits = (text: string) => [...text.matchAll(/\d+/g)].map(([found]) => found).sort()
  const same = [...german].filter(([place, text]) => /\p{L}+ \p{L}+/u.test(text) && english.get(place) === text)
  expect(same).toEqual([])
  const differing = [...german].filter(([place, text]) => digits(text).join() !== digits(english.get(place)!).join())
  expect(differing).toEqual([])
})
