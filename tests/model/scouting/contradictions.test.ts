import { describe, expect, test } from 'vitest'
import {
  type Contradiction,
  contradictions,
  type Happening,
  type Match,
  type Observation,
} from '../../../src/model/scouting/index.ts'
import { harbour } from '../documents/harbour.ts'
import { match } from '../event/matches.ts'

// The harbour: 15 s, 3 s and 60 s; the pier takes 6 pieces of an alliance, the davit one robot, the dock two.
const game = harbour()
const q1 = match(1, 'A B C', 'D E F')

let made = 0
/** What a scout saw of a robot in the first match. */
function watched(team: string, seen: Partial<Observation> = {}) {
  const observation: Observation = {
    format: 1,
    id: `r${++made}`,
    match: 'q1',
    team,
    subject: 'robot',
    origin: 'live',
    scout: `scout of ${team}`,
    device: 'phone',
    sequence: made,
    game: 1,
    identifiedBy: 'number',
    ...seen,
  }
  return { observation, team }
}

const at = (elapsed: number, what: Happening['what'], more: Partial<Happening> = {}): Happening => ({
  elapsed,
  what,
  ...more,
})
const scored = (elapsed: number, n?: number) =>
  at(elapsed, 'scored', { goal: 'pier', ...(n === undefined ? {} : { n }) })

const told = (records: ReturnType<typeof watched>[], matches: Match[] = [q1]): Contradiction[] =>
  contradictions({ game, matches: new Map(matches.map((each) => [each.id, each])) }, records)
const kinds = (...records: ReturnType<typeof watched>[]) => told(records).map(({ kind }) => kind)

describe('One record', () => {
  test('that is in order says nothing', () => {
    const timeline = [scored(3), at(10, 'collected'), scored(20), at(30, 'collected', { n: 2 }), scored(40, 2)]
    expect(told([watched('A', { timeline, finish: { attempted: 'dock', achieved: 'dock' } })])).toEqual([])
  })

  test('gives away more than it took', () => {
    const few = [scored(3), at(10, 'collected'), scored(20), at(25, 'missed', { goal: 'pier' })]
    const { observation, team } = watched('A', { timeline: few })
    expect(told([{ observation, team }])).toEqual([
      { kind: 'moreThanCollected', records: [observation.id], match: 'q1', team: 'A', in: 1, out: 2 },
    ])
    // Whoever looked away, or counted about, saw nothing impossible.
    expect(kinds(watched('A', { timeline: [...few, at(30, 'unseen'), at(31, 'seen')] }))).toEqual([])
    expect(kinds(watched('A', { timeline: [...few, { ...scored(30, 4), counted: 'estimate' }] }))).toEqual([])
    // What it never collected, it may have begun with.
    expect(kinds(watched('A', { timeline: [scored(3), scored(4)] }))).toEqual([])
  })

  test('may hold what it began with until it gives something away', () => {
    const first = [at(5, 'collected'), scored(10), scored(12)]
    expect(kinds(watched('A', { timeline: first }))).toEqual([])
    expect(kinds(watched('A', { timeline: [...first, scored(14, 3)] }))).toEqual(['moreThanCollected'])
  })

  test('is about a robot that did not come, and did something', () => {
    expect(kinds(watched('A', { absent: true }))).toEqual([])
    expect(kinds(watched('A', { absent: true, timeline: [scored(5)] }))).toEqual(['absentButSeen'])
    expect(kinds(watched('A', { absent: true, finish: { attempted: null, achieved: 'dock' } }))).toEqual([
      'absentButSeen',
    ])
    expect(
      kinds(watched('A', { absent: true, counts: [{ goal: 'pier', period: 'auto', scored: 1, missed: 0 }] })),
    ).toEqual(['absentButSeen'])
  })

  test('has something that happened outside of the match: 78 s and 5 s for the thumb', () => {
    expect(kinds(watched('A', { timeline: [scored(-5), scored(83)] }))).toEqual([])
    expect(told([watched('A', { timeline: [scored(83.1)] })])).toMatchObject([
      { kind: 'outsideMatch', elapsed: 83.1, end: 78 },
    ])
    expect(kinds(watched('A', { timeline: [scored(-5.1)] }))).toEqual(['outsideMatch'])
  })

  test('does something while it is stopped', () => {
    const stop = at(20, 'stopped')
    expect(kinds(watched('A', { timeline: [stop, at(30, 'running'), scored(31)] }))).toEqual([])
    expect(told([watched('A', { timeline: [stop, scored(31)] })])).toMatchObject([
      { kind: 'afterStop', elapsed: 31, stopped: 20 },
    ])
    // Being defended is no deed of its own.
    expect(kinds(watched('A', { timeline: [stop, at(25, 'defended')] }))).toEqual([])
    expect(kinds(watched('A', { stoppedAt: 20, timeline: [scored(25)] }))).toEqual([])
    expect(told([watched('A', { stoppedAt: 20, timeline: [scored(25.1)] })])).toMatchObject([
      { kind: 'afterStop', elapsed: 25.1, stopped: 20 },
    ])
  })

  test('is about a robot that does not play there, or a match that nobody knows', () => {
    expect(kinds(watched('Z'))).toEqual(['notInMatch'])
    expect(kinds(watched('A', { match: 'q9' }))).toEqual(['unknownMatch'])
    expect(kinds(watched('Z', { match: null, origin: 'practice' }))).toEqual([])
  })
})

describe('Records of one robot', () => {
  const counted = (n: number, more: Partial<Observation> = {}) => watched('A', { timeline: [scored(5, n)], ...more })

  test('by two scouts differ by more than three pieces', () => {
    expect(kinds(counted(1, { scout: 'mia' }), counted(4, { scout: 'ben' }))).toEqual([])
    expect(told([counted(1, { scout: 'mia' }), counted(5, { scout: 'ben' })])).toMatchObject([
      { kind: 'scoutsDiffer', goal: 'pier', low: 1, high: 5, team: 'A', match: 'q1' },
    ])
    // One that does not say is no zero; one that counted something else is.
    expect(kinds(watched('A', { scout: 'mia' }), counted(5, { scout: 'ben' }))).toEqual([])
    const none = { timeline: [], scout: 'mia' }
    expect(kinds(watched('A', none), counted(5, { scout: 'ben' }))).toEqual(['scoutsDiffer'])
  })

  test('by the same scout are two', () => {
    const [one, two] = [counted(2), counted(2)]
    expect(told([one, two, counted(2, { scout: 'ben' })])).toMatchObject([
      { kind: 'sameScoutTwice', scout: 'scout of A', records: [one.observation.id, two.observation.id] },
    ])
    // A human player, and a run outside of a match, are other things.
    expect(kinds(one, watched('A', { subject: 'human' }))).toEqual([])
  })
})

describe('Records of an alliance', () => {
  const four = { timeline: [scored(5, 4)] }

  test('fill a goal with more than it takes, whichever of two records is right', () => {
    expect(kinds(watched('A', four), watched('D', four))).toEqual([])
    expect(told([watched('A', four), watched('B', four)])).toMatchObject([
      { kind: 'overCapacity', goal: 'pier', scored: 8, capacity: 6, alliance: 'red', team: null },
    ])
    // Of two records of B one leaves room.
    const less = watched('B', { timeline: [scored(5, 2)], scout: 'ben' })
    expect(kinds(watched('A', four), watched('B', four), less)).toEqual([])
  })

  test('put more robots onto a finish than have room', () => {
    const on = (finish: string) => ({ finish: { attempted: finish, achieved: finish } })
    expect(kinds(watched('A', on('dock')), watched('B', on('dock')), watched('D', on('davit')))).toEqual([])
    expect(told([watched('A', on('davit')), watched('B', on('davit'))])).toMatchObject([
      { kind: 'finishFull', finish: 'davit', robots: 2, slots: 1, alliance: 'red' },
    ])
    const doubtful = watched('B', { finish: { attempted: 'davit', achieved: null }, scout: 'ben' })
    expect(kinds(watched('A', on('davit')), watched('B', on('davit')), doubtful)).toEqual([])
  })
})
