import { afterEach, describe, expect, test } from 'vitest'
import { breakwater } from '../../seed/index.ts'
import { game as gameContract, problemsOf } from '../../src/api/contracts/index.ts'
import { checkGame } from '../../src/model/documents/index.ts'
import { storedSentences } from '../../src/model/documents/refusals.ts'
import { inner, sentences as ofModel } from '../../src/model/documents/sentences.ts'
import { shapeSentences } from '../../src/model/documents/shapes.ts'
import type { Problem } from '../../src/model/errors.ts'
import { eventSentences } from '../../src/model/event/index.ts'
import type { Inner } from '../../src/model/said.ts'
import { peopleSentences } from '../../src/model/scouting/people.ts'
import { chooseUnits } from '../../web/units/system.ts'
import { chooseLanguage } from '../../web/words/catalogue.ts'
import { problemWords, refusalWords } from '../../web/words/problems.ts'

const nbsp = '\u00a0'

afterEach(async () => {
  chooseUnits('metric')
  await chooseLanguage(['en'])
})

const sentences = { ...ofModel, ...shapeSentences, ...storedSentences, ...peopleSentences, ...eventSentences }
type Sentences = typeof sentences

const twelve = { phase: 'qualification', number: 12, play: 1 } as const
const again = { phase: 'qualification', number: 12, play: 2 } as const

/** Every sentence with parts that can be told apart. */
const parts: { [Code in keyof Sentences]: Parameters<Sentences[Code]>[0] } = {
  idTwice: { list: 'goals', id: 'pier' },
  unknown: { thing: { spotOf: 'Pier' }, id: 'moon' },
  namedTwice: { thing: 'source', id: 'slipway' },
  noTeleop: { teleop: 0 },
  longEndgame: { teleop: 135, endgame: 140 },
  noLevel: { bonus: 'Harbour' },
  otherLevel: { bonus: 'Harbour', level: 'district', known: ['qualification', 'final'] },
  notHeld: { goal: 'pier' },
  badOutline: { obstacle: 'Rock', fault: inner('sameCorners', { one: 2, other: 5 }) },
  noPartner: { obstacle: 'Rock', symmetry: 'rotate' },
  outside: { what: { spot: 'p1', of: 'Pier' }, at: [17.5, 2.54], length: 16.6, width: 8.2 },
  tooMany: { what: 'preload', piece: 'buoy', most: 1, count: 3 },
  stepTooLate: { auto: 15, at: 18 },
  notAccepted: { goal: 'pier', piece: 'buoy' },
  noRetry: { success: 0.8 },
  notCarried: { piece: 'buoy', source: 'slipway' },
  otherwiseItself: { finish: 'davit' },
  earlierItself: {},
  earlierOtherGame: { event: 'Harbour trials' },
  driveNowhere: {},
  driveTwice: {},
  lateHabit: { teleop: 135, departs: 140 },
  longTrip: { most: 2, count: 5 },
  noShares: {},
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
  fewCorners: { count: 2 },
  manyCorners: { most: 300, count: 512 },
  sameCorners: { one: 2, other: 5 },
  foldsBack: { corner: 4 },
  edgesCross: { one: 2, other: 5 },
  noArea: {},
  fieldTooFine: { count: 304, most: 300 },
  noSuchPlace: { id: 'moon' },
  noWay: { from: { name: 'Quay' }, to: { name: 'Pier', spot: 'p1' }, apart: 0.475 },
  wayBlocked: {
    from: { name: 'Quay' },
    to: { name: 'Pier', spot: 'p1' },
    place: { name: 'Shelf' },
    at: [12.5, 2.54],
    by: { obstacle: 'Rock' },
    apart: 0.475,
  },
  tooNear: { place: { name: 'Quay' }, by: { obstacle: 'Rock' }, apart: 0.475 },
  notReached: { from: { name: 'Quay' }, to: { name: 'Pier', spot: 'p1' } },
  noRoutine: { routine: 'Two' },
  tooManyNodes: { most: 4000 },
  tooManyStates: { states: 13_000_000, most: 12_000_000 },
  legFromNowhere: { id: 'moon' },
  legToNowhere: { noun: 'goal', id: 'moon' },
  legToNoSpot: { place: 'pier', spot: 'p9' },
  canNot: { what: 'collect', id: 'slipway' },
  noEntryFor: { entry: 5, goal: 'pier' },
  notFromSpot: { entry: 5, spot: 'p9' },
  twiceInNetwork: { stage: 'aim' },
  waitsForNothing: { stage: 'aim', before: 'lift' },
  loopInNetwork: { stage: 'aim' },
  leadsElsewhere: {},
  needsFactor: {},
  negativeFactor: {},
  namesNothing: {},
  fixedNumber: {},
  mustBe: { allowed: 'between 0 and 1' },
  keepsOrder: { low: 3.5, likely: 2, high: 4 },
  keepsPace: {},
  wouldBe: { found: 1.25, why: inner('fixedNumber', {}) },
  misplaced: {
    input: 'grab',
    value: 1.25,
    pointer: '/options/0',
    why: inner('wouldBe', { found: 7, why: inner('fixedNumber', {}) }),
  },
  ofInput: { input: 'grab', why: inner('pathNowhere', { pointer: '/options/0', token: 'moon' }) },
  notFinite: { input: 'grab', value: 1.25 },
  wrongOrder: { input: 'grab', low: 3.5, likely: 2, high: 4 },
  badMeasurement: { input: 'grab', value: 1.25 },
  likelyImpossible: { why: inner('slowPace', { value: 0.9 }) },
  inputImpossible: { input: 'grab', value: 1.25, why: inner('slowPace', { value: 0.9 }) },
  noSuchInput: { input: 'grab' },
  comparedTwice: { list: 'inputs', id: 'grab' },
  sameAxes: { input: 'grab' },
  collectsNothing: { option: 'Hook', spot: 'p1' },
  pathStart: { pointer: 'options/1' },
  pathTilde: { pointer: '/options/~' },
  pathNowhere: { pointer: '/options/0', token: 'moon' },
  missing: { name: 'drawing' },
  wrongType: { name: 'drawing', noun: 'a list', got: { text: '"many"' } },
  infinite: { name: 'drawing', got: 'NaN' },
  outOfRange: { name: 'drawing', comparison: 'at least', bound: 2, got: 1.5 },
  entries: { name: 'drawing', comparison: 'at most', entries: 1, got: 3 },
  characters: { name: 'drawing', comparison: 'at most', characters: 200, got: 201 },
  emptyText: { name: 'drawing' },
  unknownFields: { keys: ['drawing'] },
  noneOf: { name: 'drawing', allowed: ['"mirror"', '"rotate"'], got: { text: '"turn"' } },
  noForm: { name: 'drawing', got: { list: 3 } },
  notAnId: { got: { text: '"x"' } },
  otherwiseWritten: { name: 'drawing', got: { text: '"x"' } },
  notMultiple: { name: 'drawing', divisor: 2, got: 3 },
  notTenths: { name: 'drawing', got: 1.25 },
  takenId: { got: { text: '"constructor"' } },
  controlInId: { got: { text: '"x"' } },
  otherFormat: { got: 2 },
  likelyBelowLow: { low: 9, likely: 8 },
  highBelowLikely: { likely: 8, high: 7 },
  spreadTooLarge: { median: 300, spread: 3.5, most: 600 },
  spreadOutside: { median: 300, spread: 3.5, low: 1, high: 600 },
  highNotAbove: { low: 9, high: 8 },
  shotMissing: {},
  freeCurrent: { bound: 20, got: 15 },
  rod: { bound: 0.02, got: 0.03 },
  pressure: { bound: 7, got: 6 },
  flow: { bound: 0.2, got: 0.3 },
  lowBelowRoom: { bound: 101, got: 90 },
  lowAboveWorking: { bound: 500, got: 600 },
  onAboveOff: { bound: 700, got: 800 },
  notADate: { got: { text: '"tomorrow"' } },
  notAMoment: { got: { text: '"tomorrow"' } },
  notAMomentWithOffset: { got: { text: '"tonight"' } },
  notTeams: { got: { text: '"a team"' } },
  notATeam: { got: { text: '"a team"' } },
  notAUuid: { got: { text: '"seven"' } },
  notBase64: { got: { text: '"%"' } },
  noDocument: { kind: 'design', id: 'moon', revision: 7 },
  inputTwice: { id: 'grab' },
  noInput: { id: 'grab' },
  fieldMissing: {},
  overriddenTwice: { id: 'grab' },
  notCompared: { thing: 'design', id: 'moon' },
  chosenElsewhere: { option: 'moon' },
  otherHead: { field: 'name', inside: 'Ours', asked: 'Theirs' },
  teamTwice: { match: twelve, team: '90001' },
  unknownTeam: { match: twelve, team: '90001' },
  positionTwice: { match: twelve, alliance: 'red', position: 3 },
  matchTwice: { match: twelve },
  matchIdTwice: { id: 'q12' },
  voidsNothing: { match: again, id: 'q13' },
  voidsOther: { match: again, voided: { ...twelve, number: 13 } },
  voidedTwice: { match: again, voided: twelve },
  playWithoutVoid: { match: again },
  sameTime: { match: twelve, other: { ...twelve, number: 13 }, teams: ['90001', '90002'] },
  allianceTooLarge: { teams: ['90001', '90002'], most: 4 },
  noMatch: { id: 'q12' },
  resultTwice: { match: twelve },
  otherMatch: { entry: 'q12', result: 'q13' },
  unknownBonus: { match: twelve, id: 'moon' },
  unknownGoal: { match: twelve, id: 'moon' },
  partsAboveTotal: { match: twelve, alliance: 'blue', parts: 91, total: 90 },
  resultOfVoided: { match: twelve, by: again },
  seatTwice: { match: twelve, alliance: 'red', position: 3 },
  personTwice: { match: twelve, person: 'ada' },
  selectionNotBegun: {},
  selectionNotLast: {},
  seedTwice: { team: '90004' },
  noTeamOfEvent: { team: '90099' },
  notInvitable: { team: '90004', kind: 'declined' },
  otherTopic: {},
  noWatcher: { person: 'ada' },
  changedMeanwhile: {},
  noEvent: { id: 'harbour-days' },
  whoTakes: {},
  onlyForYourself: {},
  noRound: { code: 'K7M3PX' },
  noWayOnSheet: { sheet: 'First', way: 'moon' },
  noFinishToGuess: { way: 'Hook' },
  roundsFull: { most: 200 },
  roundClosed: {},
  devicesFull: { most: 100 },
  correctionsFull: { most: 50 },
  notACode: { got: { text: '"zz"' } },
  notASecret: {},
  closedBeforeOpened: { code: 'K7M3PX' },
  codeTwice: { code: 'K7M3PX' },
  notYourRound: {},
  noSession: {},
  notForRole: { role: 'scout' },
  wrongPassphrase: {},
  tooManyTries: { seconds: 16 },
  tooManyRequests: { seconds: 17 },
  manySigningIn: {},
  linkUnknown: {},
  linkUsed: {},
  linkExpired: {},
  linkWithdrawn: {},
  nicknameTaken: { nickname: 'Ada' },
  nicknameMissing: {},
  passphraseMissing: {},
  shortPassphrase: { least: 12, got: 5 },
  commonPassphrase: {},
  notCurrentPassphrase: {},
  claimFirst: {},
  lastLead: {},
  otherNickname: { nickname: 'Kit' },
  noPerson: { id: 'moon' },
  copiesElsewhere: {},
  noBackup: { name: 'moon' },
  noDevice: { id: 'moon' },
  noInvitation: { id: 'moon' },
}

/** Their numbers come with a unit on a screen. */
const lengths: (keyof Sentences)[] = ['outside', 'noWay', 'wayBlocked', 'tooNear']

const codes = Object.keys(sentences) as (keyof Sentences)[]

const problemOf = (code: keyof Sentences): Problem => {
  const say = sentences[code] as (of: unknown) => string
  return { path: [], message: say(parts[code]), said: { code, parts: parts[code] } }
}

const partly = (part: Inner) => ({ message: part.text, said: part })

/** The names and numbers of a sentence's parts, as a German reader sees them. */
const named = (value: unknown): string[] => {
  if (typeof value === 'number') return [String(value).replace('.', ',')]
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(named)
  return typeof value === 'string' ? [value] : []
}

describe('what the checks of documents say', () => {
  test.each(codes.filter((code) => !lengths.includes(code)))('%s is in English what the model says', (code) => {
    expect(problemWords(problemOf(code))).toBe(problemOf(code).message)
  })

  test.each(codes)('%s is said in German, with all of its names and numbers', async (code) => {
    await chooseLanguage(['de'])
    const said = problemWords(problemOf(code))
    expect(said).not.toBe(problemOf(code).message)
    const { list: _, what, thing, symmetry: __, ...all } = parts[code] as { [part: string]: unknown }
    const { noun, comparison, allowed, kind, field, role, why, fault, alliance, ...others } = all
    // 'qualification' has a German name, so that a match is found by its number.
    const isMatch = (part: unknown): boolean => typeof part === 'object' && part !== null && 'phase' in part
    for (const match of Object.values(others).filter(isMatch))
      expect(said).toContain(`Qualifikation ${(match as { number: number }).number}`)
    const rest = Object.fromEntries(Object.entries(others).filter(([, part]) => !isMatch(part)))
    for (const part of [why, fault]) if (part) expect(said).toContain(problemWords(partly(part as Inner)))
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

  test('what a robot’s way says has its lengths in the units shown: 0.475 m / 0.0254 = 18.7 in', async () => {
    expect(problemWords(problemOf('tooNear'))).toContain(`keeps 0.475${nbsp}m from it`)
    chooseUnits('inchPound')
    expect(problemWords(problemOf('tooNear'))).toContain(`keeps 18.7${nbsp}in from it`)
    expect(problemWords(problemOf('wayBlocked'))).toContain(`100${nbsp}in across`)
    await chooseLanguage(['de'])
    expect(problemWords(problemOf('noWay'))).toContain(`18,7${nbsp}in`)
  })

  test('a bound of a field with a unit has it: 100 m / 0.0254 = 3937.01 in', async () => {
    chooseUnits('inchPound')
    await chooseLanguage(['de'])
    const parts = { name: 'length', comparison: 'at most', bound: 100, got: 200 }
    expect(problemWords({ message: '', said: { code: 'outOfRange', parts } })).toBe(
      `„Länge“ muss höchstens 3937,01${nbsp}in sein, nicht 7874,02${nbsp}in`,
    )
  })

  test('a real game with a goal moved off its field is answered in German', async () => {
    const game = structuredClone(breakwater.game)
    game.goals[0]!.spots[0]!.at = [99, 1]
    await chooseLanguage(['de'])
    expect(checkGame(game).map(problemWords)).toEqual([expect.stringMatching(/liegt außerhalb des Feldes .* 99/)])
  })

  test('a document of the wrong form is answered in German, whatever is wrong with it', async () => {
    const { sources: _, ...rest } = structuredClone(breakwater.game)
    const wrong = {
      ...rest,
      name: '',
      pieces: 'none',
      clock: { ...rest.clock, teleop: -5, endgame: 20.05 },
      field: { ...rest.field, symmetry: 'turned', clearance: 'wide' },
      starts: [{ ...rest.starts[0]!, id: 'constructor', at: [1] }],
      colour: 'blue',
    }
    const { error } = gameContract.safeParse(wrong, { reportInput: true })
    const problems = problemsOf(error!)
    await chooseLanguage(['de'])
    const said = problems.map(problemWords)
    expect(said.filter((sentence) => problems.some(({ message }) => message === sentence))).toEqual([])
    expect(said).toEqual(
      expect.arrayContaining([
        '„sources“ fehlt',
        '„Name“ darf nicht leer sein',
        '„Gefahrene Zeit“ muss mindestens 0 sein, nicht −5',
        '„Endphase“ muss ein Vielfaches von 0,1 s sein, nicht 20,05',
        '„symmetry“ muss "mirror" oder "rotate" sein, nicht "turned"',
        '„colour“ ist hier kein bekanntes Feld',
      ]),
    )
  })

  test('a sentence of a newer server stays as it came', () => {
    const said = { code: 'somethingNew', parts: {} }
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
