import { expect, onTestFinished, test, vi } from 'vitest'
import { matchTime } from '../../../web/stands/words/catalogue.ts'
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

test('a match’s time is that of the event’s own clock, wherever the phone thinks it is', () => {
  vi.stubGlobal('navigator', { languages: ['en-GB'] })
  onTestFinished(() => void vi.unstubAllGlobals())
  const now = Date.parse('2031-03-15T23:30:00Z')
  expect(matchTime('2031-03-16T09:07:00+01:00', now)).toBe('09:07')
  expect(matchTime('2031-03-15T23:45:00-05:30', now)).toContain('23:45')
  expect(matchTime('2031-03-15T09:07:00+01:00', now)).toMatch(/15 Mar.*09:07/)
  expect(matchTime('2031-03-15T09:07:00Z', now)).toBe('09:07')
})
