import { afterEach, describe, expect, test } from 'vitest'
import { breakwater } from '../../seed/index.ts'
import { checkGame } from '../../src/model/documents/index.ts'
import { type Said, type Sentences, sentences } from '../../src/model/documents/sentences.ts'
import type { Problem } from '../../src/model/errors.ts'
import { chooseUnits } from '../../web/units/system.ts'
import { chooseLanguage } from '../../web/words/catalogue.ts'
import { problemWords, refusalWords } from '../../web/words/problems.ts'

const nbsp = '\u00a0'

afterEach(async () => {
  chooseUnits('metric')
  await chooseLanguage(['en'])
})

/** Every sentence with parts that can be told apart. */
const parts: { [Code in keyof Sentences]: Parameters<Sentences[Code]>[0] } = {
  idTwice: { list: 'goals', id: 'pier' },
  unknown: { thing: { spotOf: 'Pier' }, id: 'moon' },
  namedTwice: { thing: 'source', id: 'slipway' },
  noTeleop: { teleop: 0 },
  longEndgame: { teleop: 135, endgame: 140 },
  noLevel: { bonus: 'Harbour' },
  notHeld: { goal: 'pier' },
  badOutline: { obstacle: 'Rock', fault: 'The outline encloses no area.' },
  noPartner: { obstacle: 'Rock', symmetry: 'rotate' },
  outside: { what: { spot: 'p1', of: 'Pier' }, at: [17.5, 2.54], length: 16.6, width: 8.2 },
  tooMany: { what: 'preload', piece: 'buoy', most: 1, count: 3 },
  stepTooLate: { auto: 15, at: 18 },
  notAccepted: { goal: 'pier', piece: 'buoy' },
  noRetry: { success: 0.8 },
  notCarried: { piece: 'buoy', source: 'slipway' },
  otherwiseItself: { finish: 'davit' },
  lateHabit: { teleop: 135, departs: 140 },
  slowPace: { value: 0.9 },
  openPace: {},
  builtInStage: { stage: 'drive' },
  stageTwice: { stage: 'aim' },
  waitsForItself: { stage: 'aim' },
  waitsForUnknown: { stage: 'aim', before: 'lift' },
  waitsTwice: { stage: 'aim', before: 'lift' },
  circle: { stages: ['aim', 'lift', 'aim'] },
  routineElsewhere: { routine: 'Two', start: 'west' },
  noHoldSeconds: { goal: 'lightship' },
  lateCall: { teleop: 135, at: 140 },
  earlyDefence: { teleop: 135, from: 140 },
  emptyDefence: { from: 30, until: 40 },
  nothingAccepted: { goal: 'Pier' },
  noEntry: { thing: 'finish', id: 'davit' },
  noSuchEntry: { goal: 'pier', count: 2, entry: 5 },
}

const codes = Object.keys(sentences) as (keyof Sentences)[]

const problemOf = (code: keyof Sentences): Problem => {
  const say = sentences[code] as (of: unknown) => string
  return { path: [], message: say(parts[code]), said: { code, parts: parts[code] } as Said }
}

/** The names and numbers of a sentence's parts, as a German reader sees them. */
const named = (value: unknown): string[] => {
  if (typeof value === 'number') return [String(value).replace('.', ',')]
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(named)
  return typeof value === 'string' ? [value] : []
}

describe('what the checks of documents say', () => {
  test.each(codes.filter((code) => code !== 'outside'))('%s is in English what the model says', (code) => {
    expect(problemWords(problemOf(code))).toBe(problemOf(code).message)
  })

  test.each(codes)('%s is said in German, with all of its names and numbers', async (code) => {
    await chooseLanguage(['de'])
    const said = problemWords(problemOf(code))
    expect(said).not.toBe(problemOf(code).message)
    const { list: _, what, thing, symmetry: __, ...rest } = parts[code] as { [part: string]: unknown }
    const more = [what, thing].filter((part) => typeof part === 'object')
    for (const name of [...named(rest), ...more.flatMap(named)]) expect(said).toContain(name)
  })

  test('lengths are said in the units shown: 8.2 m / 0.0254 = 322.83 in, 2.54 m = 100 in', async () => {
    expect(problemWords(problemOf('outside'))).toBe(
      `The spot “p1” of “Pier” lies outside the field of 16.6${nbsp}m × 8.2${nbsp}m, at 17.5${nbsp}m along and 2.54${nbsp}m across`,
    )
    chooseUnits('inchPound')
    expect(problemWords(problemOf('outside'))).toContain(`322.83${nbsp}in`)
    expect(problemWords(problemOf('outside'))).toContain(`100${nbsp}in across`)
    await chooseLanguage(['de'])
    expect(problemWords(problemOf('outside'))).toContain(`100${nbsp}in quer`)
  })

  test('a real game with a goal moved off its field is answered in German', async () => {
    const game = structuredClone(breakwater.game)
    game.goals[0]!.spots[0]!.at = [99, 1]
    await chooseLanguage(['de'])
    expect(checkGame(game).map(problemWords)).toEqual([expect.stringMatching(/liegt außerhalb des Feldes .* 99/)])
  })

  test('a sentence of a newer server stays as it came', () => {
    const said = { code: 'somethingNew', parts: {} } as unknown as Said
    expect(problemWords({ message: 'Something new', said })).toBe('Something new')
    expect(problemWords({ message: 'No code' })).toBe('No code')
  })
})

test('a refusal is said in German by its code, and keeps what only its sentence knows', async () => {
  const failure = { code: 'unreachable', message: 'There is no way from A to B' }
  expect(refusalWords(failure)).toBe(failure.message)
  expect(refusalWords({ code: 'malformed', message: '', problems: [problemOf('noLevel')] })).toContain('no level')
  await chooseLanguage(['de'])
  expect(refusalWords(failure)).toMatch(/kein Weg.*„There is no way from A to B“/)
  expect(refusalWords({ code: 'notFound', message: 'There is no game' })).toBe('Das gibt es nicht, oder nicht mehr.')
  expect(refusalWords({ code: 'malformed', message: '', problems: [problemOf('noLevel')] })).toContain('keine Ebene')
  expect(refusalWords({ code: 'new', message: 'New' })).toBe('New')
})
