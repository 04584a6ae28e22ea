import { describe, expect, test } from 'vitest'
import type { Duration } from '../../../../src/model/documents/types.ts'
import { fieldReport } from '../../../../src/model/scouting/field/index.ts'
import type { Match, Side } from '../../../../src/model/scouting/types.ts'
import { driven, game, happened, practice, wholeRobot } from './quay.ts'

const fixed = (seconds: number): Duration => ({ kind: 'fixed', seconds })
const robot = wholeRobot({ raft: fixed(5), slipway: fixed(9) }, { pier: fixed(4), gantry: fixed(6) })
const report = (observations: ReturnType<typeof practice>[], matches: Match[] = []) =>
  fieldReport({ game, robot, matches, observations })

const pier = (collecting: number, scoring: number) => ({ source: 'raft', goal: 'pier', collecting, scoring })

describe('two runs counted by hand', () => {
  // 9 s by the model; 12 s and 10 s, then 13 s and 11 s on the field.
  const found = report([
    practice(driven([pier(7, 5), pier(6, 4)], 43), { driver: 'Ada' }),
    practice(driven([pier(8, 5), pier(6, 5)], 45), { driver: 'Bo' }),
  ])

  test('the difference is the mean of the differences, its error that of the runs’ means', () => {
    const { whole } = found
    expect(whole).toMatchObject({ trips: 4, runs: 2, model: { mean: 9 } })
    expect(whole!.field.mean).toBeCloseTo(11.5, 9)
    expect(whole!.difference.mean).toBeCloseTo(2.5, 9)
    // Means 2 and 3: standard error ½, Student’s t with 1 degree of freedom 12.706.
    expect(whole!.field.interval95![0]).toBeCloseTo(11.5 - 12.7062 / 2, 3)
    expect(whole!.field.interval95![1]).toBeCloseTo(11.5 + 12.7062 / 2, 3)
  })

  test('legs say where it comes from, and add up', () => {
    expect(found.parts).toMatchObject({ trips: 4, difference: 2.5, collecting: 1.75, scoring: 0.75 })
    expect(found.legs.map(({ leg, share }) => [leg, share])).toEqual([
      [{ kind: 'collect', source: 'raft' }, 1.75],
      [{ kind: 'score', goal: 'pier', entry: 0 }, 0.75],
    ])
    expect(found.legs[0]!.stages).toEqual([{ stage: null, seconds: 1.75 }])
  })

  test('each driver has runs of their own', () => {
    expect(found.drivers.map(({ driver, compared }) => [driver, compared!.field.mean])).toEqual([
      ['Ada', 11],
      ['Bo', 12],
    ])
    expect(found.runs.map(({ driver, number, trips }) => [driver, number, trips])).toEqual([
      ['Ada', 1, 2],
      ['Bo', 1, 2],
    ])
    expect(found.drivers.every(({ learning }) => learning === null)).toBe(true)
  })

  test('one run has no interval', () => {
    const { whole } = report([practice(driven([pier(7, 5), pier(6, 4)], 43))])
    expect(whole!.field).toMatchObject({ mean: 11, interval95: null })
  })
})

test('a trip that was cut off hands its weight on to longer ones', () => {
  // 10 s and 14 s, and one that had lasted 12 s when the robot stopped: by Kaplan and Meier ⅓ at 10 s, ⅔ at 14 s.
  const { whole, cutOff } = report([
    practice(driven([pier(6, 4)], 31)),
    practice(driven([pier(9, 5)], 35)),
    practice([
      happened(21, 'scored', { goal: 'pier' }),
      happened(27, 'collected', { source: 'raft' }),
      happened(33, 'stopped'),
    ]),
  ])
  expect(cutOff).toBe(1)
  expect(whole!.field.mean).toBeCloseTo((10 + 2 * 14) / 3, 9)
})

test('of a design with several legs, the mix is that of the field', () => {
  const trips = [
    pier(5, 4),
    { source: 'slipway', goal: 'gantry', collecting: 9, scoring: 6 },
    { source: 'slipway', goal: 'pier', collecting: 9, scoring: 4 },
  ]
  const { whole, legs } = report([practice(driven(trips, 21 + 9 + 15 + 13))])
  expect(whole!.model.mean).toBeCloseTo((9 + 15 + 13) / 3, 9)
  expect(whole!.difference.mean).toBeCloseTo(0, 9)
  expect(legs.find(({ leg }) => leg.kind === 'collect' && leg.source === 'slipway')).toMatchObject({ trips: 2 })
})

test('what can not be put against the design is named, not guessed', () => {
  const { leftOut, trips, sourceUnknown } = report([
    practice(
      driven(
        [
          pier(5, 4),
          { source: 'raft', goal: 'lightship', collecting: 5, scoring: 4 },
          { source: 'pond', goal: 'pier', collecting: 5, scoring: 4 },
          { ...pier(5, 4), n: 3 },
          { goal: 'pier', collecting: 5, scoring: 4 },
        ],
        21 + 45,
      ),
    ),
    practice([
      happened(21, 'scored', { goal: 'pier' }),
      happened(26, 'collected', { source: 'raft' }),
      happened(27, 'collected', { source: 'slipway' }),
      happened(30, 'scored', { goal: 'pier' }),
      happened(30, 'stopped'),
    ]),
  ])
  expect(Object.fromEntries(leftOut.map(({ reason, trips }) => [reason, trips]))).toEqual({
    cannotScore: 1,
    cannotCollect: 1,
    tooMany: 1,
    mixed: 1,
  })
  expect(trips).toBe(2)
  // Of the last one the quicker source is taken, and that is said.
  expect(sourceUnknown).toBe(1)
})

test('without a trip that ended there is nothing to compare', () => {
  expect(report([])).toMatchObject({ whole: null, parts: null, runs: [], legs: [], seen: [], distribution: [] })
  expect(report([practice([happened(21, 'scored', { goal: 'pier' })])])).toMatchObject({ whole: null, cutOff: 1 })
})

test('several records of a match are one; practice and matches can be asked for alone', () => {
  const slot = (team: string) => ({ team, counts: true, state: 'played' as const })
  const side = ['1', '2', '3'].map(slot) as Side
  const match = (number: number): Match => ({
    id: `m${number}`,
    phase: 'qualification',
    number,
    play: 1,
    red: side,
    blue: side,
  })
  const observations = [
    practice(driven([pier(6, 4)], 31), { driver: 'Ada' }),
    practice(driven([pier(7, 5)], 33), { match: 'm2' }),
    practice(driven([pier(7, 7)], 35), { match: 'm2' }),
    practice(driven([pier(5, 4)], 30), { match: 'm1' }),
  ]
  const all = report(observations, [match(1), match(2)])
  // In the order of play, whatever came in first.
  expect(all.runs.map(({ kind, id, number }) => [kind, kind === 'match' ? id : '', number])).toEqual([
    ['practice', '', 1],
    ['match', 'm1', 1],
    ['match', 'm2', 2],
  ])
  expect(all.runs[2]!.field).toBeCloseTo(13, 9)
  const only = fieldReport({ game, robot, matches: [match(1), match(2)], observations, only: 'match' })
  expect(only.whole).toMatchObject({ runs: 2 })
  expect(only.whole!.field.mean).toBeCloseTo((13 + 9) / 2, 9)
})

test('who drove in a match is told apart from records, goes before them, and goes on with the driver’s practice', () => {
  const slot = (team: string) => ({ team, counts: true, state: 'played' as const })
  const side = ['1', '2', '3'].map(slot) as Side
  const match = (number: number): Match => ({
    ...{ id: `m${number}`, phase: 'qualification', number, play: 1 },
    ...{ red: side, blue: side },
  })
  const observations = [
    ...[13, 12, 11].map((seconds) => practice(driven([pier(seconds - 5, 5)], 40), { driver: 'Ada' })),
    practice(driven([pier(5, 5)], 40), { match: 'm1' }),
    practice(driven([pier(9, 5)], 40), { match: 'm2', driver: 'Ada' }),
    practice(driven([pier(8, 5)], 40), { match: 'm3' }),
  ]
  const asked = { game, robot, matches: [match(1), match(2), match(3)], observations }
  const without = fieldReport(asked)
  expect(without.drivers.map(({ driver }) => driver)).toEqual(['Ada', null])
  const { runs, drivers } = fieldReport({
    ...asked,
    drivers: [
      { match: 'm1', driver: 'Ada' },
      { match: 'm2', driver: 'Bo' },
      { match: 'm9', driver: 'Cy' },
    ],
  })
  expect(runs.map(({ id, driver, number }) => [id.startsWith('m') ? id : '', driver, number])).toEqual([
    ['', 'Ada', 1],
    ['', 'Ada', 2],
    ['', 'Ada', 3],
    ['m1', 'Ada', 4],
    ['m2', 'Bo', 1],
    ['m3', null, 1],
  ])
  expect(drivers.map(({ driver, compared }) => [driver, compared?.field.mean])).toEqual([
    ['Ada', (13 + 12 + 11 + 10) / 4],
    ['Bo', 14],
    [null, 13],
  ])
  // Four runs are enough for a curve only with the match among them.
  expect(without.drivers[0]!.learning).not.toBeNull()
  expect(without.drivers[0]!.learning!.doubling).not.toBeCloseTo(drivers[0]!.learning!.doubling, 3)
})
