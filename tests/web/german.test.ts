import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readNumber, writeNumber } from '../../web/shell/fields/parse.ts'
import { sayQuantity } from '../../web/units/write.ts'
import { chooseLanguage, languageSpoken, words } from '../../web/words/catalogue.ts'
import { de } from '../../web/words/de/index.ts'
import { en } from '../../web/words/en/index.ts'
import { day, listed, percent, plain, points, seconds, signedPoints } from '../../web/words/format.ts'

const nbsp = '\u00a0'

describe('the language', () => {
  afterAll(() => chooseLanguage(['en']))

  test.each([
    [['de'], 'de'],
    [['de-AT', 'en'], 'de'],
    [['fr', 'de-CH'], 'de'],
    [['en-US', 'de'], 'en'],
    [['fr'], 'en'],
    [['constructor'], 'en'],
    [[], 'en'],
  ])('is the first of %j that is complete: %s', async (wished, spoken) => {
    await chooseLanguage(wished)
    expect(languageSpoken()).toBe(spoken)
    expect(words().shell.close).toBe(spoken === 'de' ? 'Schließen' : 'Close')
  })
})

describe('in German', () => {
  beforeAll(() => chooseLanguage(['de']))
  afterAll(() => chooseLanguage(['en']))

  test('numbers have a decimal comma, dates and lists the habits of the language', () => {
    expect(points(12.345)).toBe('12,3')
    expect(signedPoints(-2.08)).toBe('\u22122,1')
    expect(signedPoints(2.08)).toBe('+2,1')
    expect(signedPoints(0.04)).toBe('0,0')
    expect(seconds(4.25)).toBe(`4,3${nbsp}s`)
    expect(plain(1234.5)).toBe('1234,5')
    expect(percent(0.999)).toBe(`über 99${nbsp}%`)
    expect(day('2026-11-25T12:00:00Z')).toBe('25. November 2026')
    expect(listed(['a', 'b', 'c'])).toBe('a, b und c')
    expect(sayQuantity(-0.55, 'length', 'metric')).toBe(`\u22120,55${nbsp}m`)
  })

  test('a piece keeps the name that it was given, however many of it are held', () => {
    expect(words().actions.holding(1, 'Kisten')).toBe(`mit 1${nbsp}×${nbsp}Kisten`)
    expect(words().actions.holding(3, 'Boje')).toBe(`mit 3${nbsp}×${nbsp}Boje`)
  })

  test('what a field shows can be typed back, with a comma or a point', () => {
    expect(writeNumber(1.5)).toBe('1,5')
    expect(writeNumber(0.9144, { quantity: 'length' }, 'metric')).toBe('0,9144')
    expect(readNumber('1,5')).toEqual({ value: 1.5 })
    expect(readNumber('1.5')).toEqual({ value: 1.5 })
    expect(readNumber('0,9 m', { quantity: 'length' })).toEqual({ value: 0.9 })
    expect(readNumber('11,5', { max: 10.5 })).toEqual({ error: 'Höchstens 10,5, nicht 11,5.' })
  })
})

/** Stands for whatever a text may ask for: a number, a name, a list of names, and things that have such parts. */
function sample(index: number): unknown {
  const text = String(index + 2)
  const list = { map: (of: (name: string) => string) => ['A', 'B'].map(of), join: () => 'A, B', toFixed: () => text }
  return new Proxy(Object(text), {
    get(target: object, key) {
      if (Object.hasOwn(list, key)) return Reflect.get(list, key)
      const own: unknown = Reflect.get(target, key)
      if (typeof own === 'function') return own.bind(target)
      return own ?? (typeof key === 'symbol' ? undefined : sample(index + 1))
    },
  })
}

/** Every text of a catalogue; of a function, what it says of the same arguments. */
function leaves(part: unknown, place: string): [string, string][] {
  if (typeof part === 'string' || part instanceof String) return [[place, String(part)]]
  if (typeof part === 'function') {
    return leaves(part(...Array.from({ length: part.length }, (_, index) => sample(index))), place)
  }
  return Object.entries(part as object).flatMap(([key, inner]) => leaves(inner, `${place}.${key}`))
}

describe('the two catalogues', () => {
  // What is wrong and what is refused is said from parts and codes: problems.test.ts says each of them.
  const { problems: _, refusals: _r, ...enough } = en
  const { problems: __, refusals: __r, ...genug } = de
  const [english, german] = [new Map(leaves(enough, '')), new Map(leaves(genug, ''))]

  test('have the same texts, none of them empty', () => {
    expect(english.size).toBeGreaterThan(500)
    expect([...german.keys()].sort()).toEqual([...english.keys()].sort())
    expect([...german].filter(([, text]) => text.trim() === '')).toEqual([])
  })

  test('say something else in German wherever there is more than a word', () => {
    const same = [...german].filter(([place, text]) => /\p{L}+ \p{L}+/u.test(text) && english.get(place) === text)
    expect(same).toEqual([])
  })

  test('hold the same numbers and names: what one is told, the other is told too', () => {
    const given = (text: string) => [...text.matchAll(/\b[2-9]\b/g)].map(([digit]) => digit).sort()
    const told = (part: unknown, place: string): string[] => {
      if (typeof part !== 'function') {
        if (typeof part !== 'object' || part === null) return []
        return Object.entries(part).flatMap(([key, inner]) => told(inner, `${place}.${key}`))
      }
      return [place]
    }
    const functions = told(enough, '')
    expect(functions.length).toBeGreaterThan(80)
    const differing = functions.filter((place) => {
      const [a, b] = [english.get(place), german.get(place)]
      return a !== undefined && b !== undefined && given(a).join() !== given(b).join()
    })
    expect(differing).toEqual([])
  })
})
