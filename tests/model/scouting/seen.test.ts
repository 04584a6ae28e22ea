import { describe, expect, it } from 'vitest'
import { seenByTeam, seenIn } from '../../../src/model/scouting/seen/index.ts'
import type { Happening, Match, Observation } from '../../../src/model/scouting/types.ts'
import { game as season } from '../reference.ts'

/** Autonomous to 15 s, teleop from 20 s to 120 s: times below are counted by hand on this clock. */
const game = { ...season, clock: { auto: 15, pause: 5, teleop: 100, endgame: 20 } }

const base: Observation = {
  format: 1,
  id: 'r1',
  match: 'm1',
  team: '90001',
  subject: 'robot',
  origin: 'live',
  scout: 's',
  device: 'd',
  sequence: 1,
  game: 1,
  identifiedBy: 'number',
}
const seen = (change: Partial<Observation>) => seenIn(game, { ...base, ...change })
const at = (elapsed: number, what: Happening['what'], more: Partial<Happening> = {}): Happening => ({
  elapsed,
  what,
  ...more,
})
const pier = { goal: 'pier' }
const secondsOf = (change: Partial<Observation>) =>
  seen(change).teleop!.cycles.map(({ seconds, ended }) => [Math.round(seconds * 1e6) / 1e6, ended])

describe('a timeline with pieces collected', () => {
  const timeline = [
    at(8, 'scored', pier), // autonomous
    at(24, 'scored', pier), // what it began teleop with
    at(30, 'collected', { source: 'raft', n: 2 }),
    at(35, 'scored', pier),
    at(38, 'missed', pier), // the same trip: ends here
    at(45, 'collected', { source: 'raft' }),
    at(50, 'scored', { goal: 'gantry' }),
    at(60, 'collected', { source: 'slipway' }),
    at(105, 'left'),
  ]
  const { teleop, autonomous, finish } = seen({ timeline, finish: { attempted: 'davit', achieved: null } })

  it('gives times between the ends of trips, and the trip in hand as one that takes longer', () => {
    expect(teleop!.cycles.map(({ seconds, ended, collecting }) => [seconds, ended, collecting])).toEqual([
      [14, true, 6],
      [12, true, 7],
      [55, false, null],
    ])
  })

  it('keeps the first trip apart, and knows that the robot held it from the start', () => {
    expect(teleop!.first).toEqual({ seconds: 4, pieces: 1, preloaded: true })
    expect(teleop!.trips.map(({ first }) => first)).toEqual([true, false, false])
  })

  it('counts pieces by goal and period, and active seconds to the departure', () => {
    expect(autonomous).toEqual({ pier: { scored: 1, missed: 0 } })
    expect(teleop!.goals).toEqual({ pier: { scored: 2, missed: 1 }, gantry: { scored: 1, missed: 0 } })
    expect(teleop!.active).toBe(85)
    expect(teleop!.departed).toBe(15)
    expect(teleop!.sources).toEqual({ raft: 3, slipway: 1 })
    expect(finish).toEqual({ attempted: 'davit', achieved: null })
  })
})

describe('a timeline without pieces collected', () => {
  it('takes placements that follow within the trip gap for one trip', () => {
    const timeline = [21, 30, 31.5, 33, 36, 60].map((elapsed) => at(elapsed, 'scored', pier))
    // Trips end at 21, 33 (30, 31.5 and 33), 36 and 60; teleop ends at 120.
    expect(secondsOf({ timeline })).toEqual([
      [12, true],
      [3, true],
      [24, true],
      [60, false],
    ])
    expect(seen({ timeline }).teleop!.first!.preloaded).toBeNull()
  })
})

describe('what a robot does not play', () => {
  it('is no part of its cycles and active seconds: a stop, defence', () => {
    const timeline = [
      at(30, 'scored', pier),
      at(34, 'stopped'),
      at(44, 'running'),
      at(50, 'scored', pier),
      at(60, 'defending'),
      at(75, 'free'),
      at(90, 'scored', pier),
    ]
    expect(secondsOf({ timeline })).toEqual([
      [10, true],
      [25, true],
      [30, false],
    ])
    const { active, defence } = seen({ timeline }).teleop!
    expect(active).toBe(100 - 10 - 15)
    expect(defence.played).toBe(15)
  })

  it('ends with a stop that lasts: the trip in hand is cut there', () => {
    const timeline = [at(30, 'scored', pier), at(42, 'scored', pier), at(50, 'stopped')]
    expect(secondsOf({ timeline })).toEqual([
      [12, true],
      [8, false],
    ])
    const { stopped, teleop } = seen({ timeline })
    expect(stopped).toBe(true)
    expect(teleop!.active).toBe(30)
  })

  it('is unknown while it is out of sight: the trip before has lasted at least so long, the next has no beginning', () => {
    const timeline = [30, 42].map((elapsed) => at(elapsed, 'scored', pier))
    timeline.push(at(50, 'unseen'), at(70, 'seen'), at(75, 'scored', pier), at(90, 'scored', pier), at(100, 'left'))
    expect(secondsOf({ timeline })).toEqual([
      [12, true],
      [8, false],
      [15, true],
      [10, false],
    ])
    expect(seen({ timeline }).teleop!.active).toBe(60)
  })

  it('does not end with a departure after which it goes on', () => {
    const timeline = [at(30, 'scored', pier), at(100, 'left'), at(110, 'scored', pier)]
    expect(seen({ timeline }).teleop).toMatchObject({ active: 100, departed: 'never' })
  })

  it('is told beside a count', () => {
    const counts = [{ goal: 'pier', period: 'teleop' as const, scored: 7, missed: 2 }]
    const one = seen({ counts, lostSeconds: 12, defence: { playedSeconds: 20, received: 'none' }, departedAt: 110 })
    expect(one.teleop).toMatchObject({ active: 90 - 12 - 20, departed: 10, cycles: [], trips: [] })
    expect(seen({ counts, stoppedAt: 70 })).toMatchObject({ stopped: true, teleop: { active: 50 } })
    expect(seen({ counts, finish: { attempted: 'davit', achieved: 'davit' } }).teleop!.departed).toBe('unknown')
  })
})

it('what others did to it is counted within its active seconds', () => {
  const timeline = [at(30, 'scored', pier), at(40, 'defended'), at(55, 'scored', pier), at(70, 'released')]
  expect(seen({ timeline }).teleop!.defence.received).toEqual({
    seconds: 30,
    attempts: 1,
    freeSeconds: 70,
    freeAttempts: 1,
  })
})

describe('records of an event', () => {
  const slot = (team: string, state: 'expected' | 'absent' = 'expected') => ({ team, counts: true, state })
  const match = (number: number, state: 'expected' | 'absent' = 'expected'): Match => ({
    id: `m${number}`,
    phase: 'qualification',
    number,
    play: 1,
    red: [slot('90001'), slot('90002', state), slot('90003')],
    blue: [slot('90004'), slot('90005'), slot('90006')],
  })
  const matches = [match(2, 'absent'), match(1)]
  const count = (id: string, scored: number, change: Partial<Observation> = {}) => ({
    team: '90001',
    observation: { ...base, id, counts: [{ goal: 'pier', period: 'teleop' as const, scored, missed: 0 }], ...change },
  })

  it('are averaged where several are of one robot in one match', () => {
    const own = seenByTeam({ game, matches, watched: [count('a', 4), count('b', 7)] }).get('90001')!
    expect(own).toHaveLength(1)
    expect(own[0]!.teleop!.goals).toEqual({ pier: { scored: 5.5, missed: 0 } })
    expect(own[0]!.records).toEqual(['a', 'b'])
  })

  it('give their times half each where two have times', () => {
    const timeline = [30, 42].map((elapsed) => at(elapsed, 'scored', pier))
    const both = ['a', 'b'].map((id) => ({ team: '90001', observation: { ...base, id, timeline } }))
    const own = seenByTeam({ game, matches, watched: both }).get('90001')!
    expect(own[0]!.teleop!.cycles.map(({ weight }) => weight)).toEqual([0.5, 0.5, 0.5, 0.5])
  })

  it('give way to the one that a lead has chosen', () => {
    const choices = [{ match: 'm1', team: '90001', record: 'b' }]
    const own = seenByTeam({ game, matches, watched: [count('a', 4), count('b', 7)], choices }).get('90001')!
    expect(own[0]!.records).toEqual(['b'])
  })

  it('come in the order of play, with the changes of the robot before them', () => {
    const watched = [count('b', 7, { match: 'm2' }), count('a', 4)]
    const changes = [{ team: '90001', afterMatch: 'm1' }]
    const own = seenByTeam({ game, matches, watched, changes }).get('90001')!
    expect(own.map(({ match, era }) => [match, era])).toEqual([
      ['m1', 0],
      ['m2', 1],
    ])
  })

  it('leave out practice and human players, and know an absent robot from the schedule', () => {
    const watched = [count('a', 4, { match: null, origin: 'practice' }), count('b', 4, { subject: 'human' })]
    const teams = seenByTeam({ game, matches, watched })
    expect(teams.get('90001')).toBeUndefined()
    expect(teams.get('90002')!.map(({ match, absent }) => [match, absent])).toEqual([['m2', true]])
  })
})
