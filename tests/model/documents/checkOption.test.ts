import { describe, expect, test } from 'vitest'
import { checkLeg, checkOption, type Option } from '../../../src/model/documents/index.ts'
import type { LegRequest } from '../../../src/model/leg/types.ts'
import { harbour, tern, ternBest } from './harbour.ts'
import { type Case, expectOne } from './problems.ts'

const cases: Case<Option>[] = [
  ['an unknown start', (option) => Object.assign(option, { start: 'middle', auto: null }), ['start'], /“middle”/],
  ['an unknown routine', (option) => Object.assign(option, { auto: 'two' }), ['auto'], /no routine.*“two”/],
  [
    'a routine that begins elsewhere',
    (option) => Object.assign(option, { start: 'right' }),
    ['auto'],
    /“One on the pier” does not begin at the start “right”/,
  ],
  ['an unknown source', ({ role }) => role.sources.push('quay'), ['role', 'sources', 1], /no source.*“quay”/],
  ['an unknown goal', ({ role }) => role.goals.push('crow'), ['role', 'goals', 2], /no goal.*“crow”/],
  ['a finish named twice', ({ role }) => role.finishes.push('dock'), ['role', 'finishes', 2], /“dock” is named twice/],
  [
    'a goal that pays for holding without seconds',
    (option) => Object.assign(option, { holdSeconds: {} }),
    ['holdSeconds'],
    /“mast” pays for holding/,
  ],
  [
    'seconds of holding at a goal that pays for each piece',
    ({ holdSeconds }) => Object.assign(holdSeconds, { pier: 3 }),
    ['holdSeconds', 'pier'],
    /no goal that pays for holding with the id “pier”/,
  ],
  [
    'a call before teleop begins',
    (option) => Object.assign(option, { finish: { mode: 'always', at: 60.1 } }),
    ['finish', 'at'],
    /at most 60 s, got 60\.1/,
  ],
  [
    'defending from before teleop',
    ({ role }) => Object.assign(role, { defend: { mark: 0, from: 61, until: 10 } }),
    ['role', 'defend', 'from'],
    /at most 60 s, got 61/,
  ],
  [
    'defending until earlier than it begins',
    ({ role }) => Object.assign(role, { defend: { mark: 0, from: 20, until: 30 } }),
    ['role', 'defend', 'until'],
    /less than from \(20\), got 30/,
  ],
  [
    'what its robot gets wrong',
    ({ robot }) => Object.assign(robot.finish['davit']!, { otherwise: 'quay' }),
    ['robot', 'finish', 'davit', 'otherwise'],
    /“quay”/,
  ],
]

describe('An option is refused, with the field and a sentence, for', () => {
  test.each(cases)('%s', (_what, change, path, words) => {
    const option = ternBest()
    change(option)
    expectOne(checkOption(harbour(), option), path, words)
  })
})

test('An option in which everything fits has no problem', () => {
  expect(checkOption(harbour(), ternBest())).toEqual([])
})

test('A role may name places for which the robot has no entry', () => {
  const option = ternBest()
  option.robot.score = {}
  option.robot.finish = {}
  option.holdSeconds = {}
  expect(checkOption(harbour(), option)).toEqual([])
})

test('A routine that scores where holding pays needs the seconds, even outside the role', () => {
  const option = ternBest()
  option.role.goals = ['pier']
  option.holdSeconds = {}
  option.robot.autos[0]!.steps[0]!.goal = 'mast'
  expectOne(checkOption(harbour(), option), ['holdSeconds'], /“mast”/)
})

const legs: [string, LegRequest, string, RegExp][] = [
  [
    'an unknown source',
    { kind: 'collect', source: 'quay', spot: 'slip.1', from: 'left', load: 1 },
    'source',
    /no source.*“quay”/,
  ],
  [
    'a spot of another place',
    { kind: 'collect', source: 'slip', spot: 'pier.1', from: 'left', load: 1 },
    'spot',
    /no spot of “slip”/,
  ],
  [
    'a load above what it carries',
    { kind: 'collect', source: 'slip', spot: 'slip.1', from: 'left', load: 3 },
    'load',
    /\(2\), got 3/,
  ],
  [
    'an unknown way to score',
    { kind: 'score', goal: 'pier', entry: 1, spot: 'pier.1', from: 'left', piece: 'buoy', load: 1 },
    'entry',
    /less than 1, the number of ways.*got 1/,
  ],
  [
    'a piece that the goal refuses',
    { kind: 'score', goal: 'pier', entry: 0, spot: 'pier.1', from: 'left', piece: 'net', load: 1 },
    'piece',
    /“pier” does not accept “net”/,
  ],
  ['a beginning that is no spot', { kind: 'finish', finish: 'dock', spot: 'dock.1', from: 'dock' }, 'from', /“dock”/],
  ['an unknown finish', { kind: 'finish', finish: 'quay', spot: 'dock.1', from: 'left' }, 'finish', /“quay”/],
]

describe('A leg is refused, with the field and a sentence, for', () => {
  test.each(legs)('%s', (_what, leg, field, words) => {
    expectOne(checkLeg(harbour(), tern(), leg), [field], words)
  })
})

test('A leg to a place for which the robot has no entry is refused', () => {
  const robot = tern()
  robot.finish = {}
  const leg: LegRequest = { kind: 'finish', finish: 'dock', spot: 'dock.1', from: 'left' }
  expectOne(checkLeg(harbour(), robot, leg), ['finish'], /no entry for the finish “dock”/)
})
