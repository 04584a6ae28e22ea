import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import type { TimedTrial } from '../../../src/model/documents/timing.ts'
import { valueAt } from '../../../web/data/place.ts'
import { comparedDrive } from '../../../web/screens/designs/stopwatch/drives.ts'
import { joined, unsent } from '../../../web/screens/designs/stopwatch/keep.ts'
import { timedKey, timedParts, timedPlace, timingId } from '../../../web/screens/designs/stopwatch/parts.ts'
import { struck, type Tap, tapped, tookBack, type Watch } from '../../../web/screens/designs/stopwatch/watch.ts'

const begin: Watch = { startedAt: null, trials: [], past: [] }
const noon = Date.UTC(2026, 10, 25, 12)

/** Presses at so many seconds after noon. */
const pressed = (...taps: [Tap, number][]): Watch =>
  taps.reduce((watch, [tap, at], index) => tapped(watch, tap, noon + at * 1000, `t${index}`), begin)
const times = ({ trials }: Watch) => trials.map(({ seconds }) => seconds)

describe('the stopwatch', () => {
  test('takes the time between start and stop, to a hundredth, and when it ended', () => {
    const watch = pressed(['start', 1], ['stop', 3.4567])
    expect(watch.trials).toEqual([{ id: 't1', seconds: 2.46, at: '2026-11-25T12:00:03.456Z', struck: null }])
    expect(watch.startedAt).toBeNull()
  })
  test('‘next’ ends one time and begins the next at the same moment: 2, 3 and 1.5 s', () => {
    const watch = pressed(['start', 0], ['next', 2], ['next', 5], ['stop', 6.5])
    expect(times(watch)).toEqual([2, 3, 1.5])
  })
  test('a press that does not fit changes nothing', () => {
    expect(pressed(['stop', 1])).toBe(begin)
    expect(pressed(['next', 1])).toBe(begin)
    const running = pressed(['start', 1])
    expect(tapped(running, 'start', noon, 'x')).toBe(running)
  })
  test('a stop is taken back: its time is gone, and the watch runs on from its start', () => {
    const back = tookBack(pressed(['start', 0], ['next', 2], ['stop', 5]))
    expect(times(back)).toEqual([2])
    expect(back.startedAt).toBe(noon + 2000)
    expect(times(tapped(back, 'stop', noon + 6000, 'x'))).toEqual([2, 4])
    const all = tookBack(tookBack(back))
    expect([all.startedAt, all.trials]).toEqual([null, []])
    expect(tookBack(all)).toBe(all)
  })
  test('what was struck since then is not undone with a press', () => {
    const two = pressed(['start', 0], ['next', 2], ['stop', 5])
    const back = tookBack({ ...two, trials: struck(two.trials, 't1', 'slipped') })
    expect(back.trials).toMatchObject([{ id: 't1', struck: 'slipped' }])
  })
})

const trial = (id: string, seconds: number, more: Partial<TimedTrial> = {}): TimedTrial => ({
  id,
  seconds,
  at: `2026-11-25T12:00:0${id.length}.000Z`,
  struck: null,
  ...more,
})

describe('times on a phone and on the server', () => {
  const [a, bb, ccc] = [trial('a', 1), trial('bb', 2), trial('ccc', 3)]
  test('what two phones took of one stage comes together, in the order in which it was taken', () => {
    const here = { trials: [a, ccc], server: { revision: 1, trials: [a] } }
    const found = joined(here, { revision: 2, trials: [a, bb] })
    expect(found.trials).toEqual([a, bb, ccc])
    expect(unsent(found)).toBe(1)
  })
  test('what was struck there is struck here, and what was struck here stays', () => {
    const here = { trials: [trial('a', 1, { struck: 'late' }), bb], server: { revision: 1, trials: [a, bb] } }
    const found = joined(here, { revision: 2, trials: [a, trial('bb', 2, { struck: 'fell' })] })
    expect(found.trials.map(({ struck: reason }) => reason)).toEqual(['late', 'fell'])
  })
  test('a time that was taken back here does not come again from the server', () => {
    const here = { trials: [a], server: { revision: 1, trials: [a, bb] } }
    expect(unsent(here)).toBe(1)
    expect(joined(here, { revision: 2, trials: [a, bb, ccc] }).trials).toEqual([a, ccc])
  })
  test('a phone that knows of no record takes what the server has', () => {
    const found = joined({ trials: [], server: null }, { revision: 4, trials: [a, bb] })
    expect([found.trials, unsent(found)]).toEqual([[a, bb], 0])
  })
})

describe('what can be timed', () => {
  const { game } = breakwater
  const { robot } = optionOf('shearwater-best')
  const drives = timedParts(game, robot).filter(({ part }) => part.kind === 'drive')
  const parts = timedParts(game, robot).filter(({ part }) => part.kind !== 'drive')
  test('is every stage, and repeated tries, each at the place of its Duration', () => {
    const stages = [
      ...Object.values(robot.collect),
      ...Object.values(robot.score).flat(),
      ...Object.values(robot.finish),
    ]
      .map((trip) => ('stages' in trip ? trip.stages.length : 1))
      .reduce((sum, count) => sum + count, 0)
    expect(parts.length).toBe(stages + Object.keys(robot.collect).length)
    for (const { place, name } of parts) expect(valueAt({ robot }, place!), name).toHaveProperty('kind')
    expect(new Set(parts.map(({ key }) => key)).size).toBe(parts.length)
  })
  test('is the drive of every leg, between any ends of it, and the record of each is its own', () => {
    const legs = Object.values(robot.collect).length + Object.values(robot.score).flat().length
    expect(drives.length).toBe(legs + Object.values(robot.finish).length)
    const found = drives.find(({ leg }) => leg.kind === 'score' && leg.goal === 'gantry')!
    const gantry = game.goals.find(({ id }) => id === 'gantry')!.spots.map(({ id }) => id)
    // It scores from one spot of the two only.
    expect(gantry).toHaveLength(2)
    expect(found.ends?.to).toEqual(['gantry.foot'])
    expect(found.place).toBeNull()
    const other = { kind: 'drive' as const, from: game.starts[0]!.id, to: gantry[0]! }
    const asked = timedParts(game, robot, timedKey(found.leg, other)).find(
      ({ key }) => key === timedKey(found.leg, other),
    )
    expect(asked?.part).toEqual(other)
    expect(timingId('x', found.leg, other)).not.toBe(timingId('x', found.leg, found.part))
  })
  test('a drive given whole can not be told apart from its stages', () => {
    const whole = {
      ...robot,
      finish: {},
      score: {},
      collect: { outer: { whole: { kind: 'fixed' as const, seconds: 4 }, success: 1, retry: null } },
    }
    expect(timedParts(game, whole).map(({ part }) => part.kind)).toEqual(['whole'])
  })
  test('measured drives are compared with the ideal line times the mean pace: 2 s × 1.2 = 2.4 s, 3 s are 1.5 times the line', () => {
    const pace = { kind: 'samples', seconds: [1.1, 1.2, 1.3] } as const
    const found = comparedDrive([2.8, 3, 3.2], 2, { ...pace, seconds: [...pace.seconds] })
    expect(found.measured).toBeCloseTo(3, 12)
    expect(found.expected).toBeCloseTo(2.4, 12)
    expect(found.difference).toBeCloseTo(0.6, 12)
    expect(found.factor).toBeCloseTo(1.5, 12)
  })
  test('a stage is found again when others were put before it, and not when it is gone', () => {
    const found = parts.find(({ key }) => key === 'score/gantry/0/stage/hook-on')!
    expect(found.place).toEqual(['robot', 'score', 'gantry', 0, 'stages', 2, 'duration'])
    const [entry] = robot.score['gantry']!
    const without = (id: string) => ({
      ...robot,
      score: { gantry: [{ ...entry!, stages: 'stages' in entry! ? entry.stages.filter((one) => one.id !== id) : [] }] },
    })
    expect(timedPlace(without('raise'), found.leg, found.part)).toEqual([
      'robot',
      'score',
      'gantry',
      0,
      'stages',
      1,
      'duration',
    ])
    expect(timedPlace(without('hook-on'), found.leg, found.part)).toBeNull()
  })
  test('its record has one id on every phone, and a long one still fits and differs', () => {
    const leg = { kind: 'score', goal: 'g'.repeat(60), entry: 0 } as const
    const ids = ['a', 'b'].map((stage) => timingId('tern', leg, { kind: 'stage', stage: stage.repeat(60) }))
    expect(ids.every((id) => id.length <= 100)).toBe(true)
    expect(ids[0]).not.toBe(ids[1])
    expect(timingId('tern', { kind: 'finish', finish: 'davit' }, { kind: 'whole' })).toBe('tern.finish.davit.whole')
    expect(timedKey({ kind: 'collect', source: 'outer' }, { kind: 'retry' })).toBe('collect/outer/retry')
  })
})
