import { expect, test } from 'vitest'
import type { Game, Goal, Option } from '../../src/model/documents/types.ts'
import { simulate } from '../../src/model/match/index.ts'
import { sampleMatches } from '../../src/model/match/timeline.ts'
import { carrier, fixed, quay } from './quay.ts'

/** The quay with a mast that pays by the second, and a berth to end in. Autonomous until 10 s, teleop from 12 s to 52 s, endgame from 42 s. */
function harbourFront(): Game {
  const game = quay(40, 1)
  const [crane] = game.goals as [Goal]
  const bonus = { rankingPoints: 1, points: 0, scope: 'both' } as const
  return {
    ...game,
    clock: { auto: 10, pause: 2, teleop: 40, endgame: 10 },
    goals: [
      { ...crane, award: { kind: 'each', auto: 3, teleop: 2 } },
      {
        ...crane,
        id: 'mast',
        name: 'Mast',
        spots: [{ id: 'mast.1', at: [5, 5] }],
        award: { kind: 'hold', autoPerSecond: 2, teleopPerSecond: 1 },
      },
    ],
    finishes: [{ id: 'berth', name: 'Berth', spots: [{ id: 'berth.1', at: [5, 5] }], slots: 1, points: 5 }],
    leave: { points: 2 },
    sets: [{ id: 'pair', name: 'Pair', needs: { crane: 2, mast: 1 }, points: 4 }],
    bonuses: [
      { ...bonus, id: 'eleven', name: 'Eleven', points: 7, metric: { kind: 'pieces', goals: ['crane'] }, atLeast: 11 },
      { ...bonus, id: 'twelve', name: 'Twelve', points: 90, metric: { kind: 'pieces', goals: ['crane'] }, atLeast: 12 },
      {
        ...bonus,
        id: 'moored',
        name: 'Moored',
        points: 2,
        metric: { kind: 'finished', finishes: ['berth'] },
        atLeast: 1,
      },
      {
        ...bonus,
        id: 'aloft',
        name: 'Aloft',
        points: 3,
        metric: { kind: 'heldSeconds', goal: 'mast' },
        atLeast: 16.5,
        scope: 'own',
      },
      {
        ...bonus,
        id: 'early',
        name: 'Early',
        rankingPoints: 0,
        points: 1,
        metric: { kind: 'autoPoints' },
        atLeast: 16,
        scope: 'own',
      },
    ],
  }
}

/** A carrier that takes `taking` and places `placing` seconds, at one goal only. */
function worker(goal: string, taking: number, placing: number, change: Partial<Option['robot']> = {}): Option {
  const option = carrier(fixed(taking), fixed(placing))
  const { crane } = option.robot.score
  return {
    ...option,
    robot: { ...option.robot, score: { [goal]: crane! }, ...change },
    role: { ...option.role, goals: [goal] },
    holdSeconds: goal === 'mast' ? { mast: 5 } : {},
  }
}

/**
 * Seconds since the match's start; nobody drives, and every time is fixed.
 *
 *   Crane, ours:   takes 4 s, places 2 s:  18 24 30 36 42 48             6 pieces
 *   Crane, theirs: takes 3.5 s, places 3.5 s:  19 26 33 40 47            5 pieces
 *   Mast, ours:    one at 3 s in autonomous, then 5 s + 5 s:  22 32 42   4 pieces (one at the buzzer, 52, would pay nothing)
 *   Mast, theirs:  takes 3 s, places 3.5 s:  18.5 25 31.5 38 44.5 51     6 pieces
 *   Berth, ours:   called at 10 s left, 3 s:  45
 *
 *   Mast:  from  until  ours : theirs  leads
 *             0      3     0 : 0       nobody
 *             3     10     1 : 0       ours, 7 s at 2 points a second
 *            10     12                 pause
 *            12   18.5     1 : 0       ours, 6.5 s
 *          18.5     22     1 : 1       nobody
 *            22     25     2 : 1       ours, 3 s
 *            25   31.5     2 : 2       nobody
 *          31.5     32     2 : 3       theirs, 0.5 s
 *            32     38     3 : 3       nobody
 *            38     42     3 : 4       theirs, 4 s
 *            42   44.5     4 : 4       nobody
 *          44.5     51     4 : 5       theirs, 6.5 s
 *            51     52     4 : 6       theirs, 1 s
 *
 *   Held: ours 7 + 6.5 + 3 = 16.5 s, 14 + 9.5 = 23.5 points, 23 rounded down. Theirs 0.5 + 4 + 6.5 + 1 = 12 s, 12 points.
 *   Own lead 0 or −1, seconds after each piece:
 *     ours, 18.5–22 and 25–51:  after 3: 29.5, after 22: 26, after 32: 19, after 42: 9, together 83.5
 *     theirs, 0–31.5, 32–38 and 42–44.5:  after 18.5: 21.5, after 25: 15, after 31.5: 8.5, after 38: 2.5, then 0, 0, together 47.5
 *
 *   Pairs: ours min(6 / 2, 4 / 1) = 3, 12 points; theirs min(⌊5 / 2⌋, 6) = 2, 8 points.
 *   Bonuses: eleven at the crane together and one at the berth, paid to both; 16.5 s held and 16 points (14 + leaving) in
 *   autonomous, ours alone.
 *   Points: ours 12 crane + 2 leaving + 5 berth + 23 mast + 12 pairs + 7 + 2 + 3 + 1 = 67.
 *           theirs 10 crane + 12 mast + 8 pairs + 7 + 2 = 39.
 *   Ranking points: ours 2 for the win + 3; theirs 2.
 */
test('hold goals, sets and bonuses of both alliances come out as a timeline by hand says', () => {
  const game = harbourFront()
  const routine = {
    id: 'aloft',
    name: 'One on the mast',
    starts: ['start'],
    steps: [{ at: 3, goal: 'mast', piece: 'box', count: 1, success: 1, needsPrevious: false }],
    leaves: 1,
    endsAt: 'start',
    holding: null,
  }
  const berthing: Option['robot']['finish'] = { berth: { whole: fixed(3), success: 1, otherwise: null } }
  const home: Option = {
    ...worker('crane', 4, 2, { finish: berthing }),
    role: { sources: [], goals: [], finishes: ['berth'], defend: null },
    finish: { mode: 'always', at: 10 },
  }
  const absent = worker('crane', 4, 2, { reliability: { absent: 1, stops: 0 } })
  const ours = [worker('crane', 4, 2), { ...worker('mast', 5, 5, { autos: [routine] }), auto: 'aloft' }, home]
  const theirs = [worker('mast', 3, 3.5), worker('crane', 3.5, 3.5), absent]
  const report = simulate({ game, ours, theirs, replicates: 500, seed: 6, checked: true })

  const { typical } = sampleMatches({ game, ours, theirs, seed: 6 })
  const placedBy = (robot: number) =>
    typical.events.filter((event) => event.kind === 'places' && event.robot === robot).map(({ at }) => at)
  const near = (times: number[], wanted: number[]) => {
    expect(times.length).toBe(wanted.length)
    for (const [k, time] of times.entries()) expect(time).toBeCloseTo(wanted[k]!, 9)
  }
  near(placedBy(0), [18, 24, 30, 36, 42, 48])
  near(placedBy(1), [3, 22, 32, 42])
  near(placedBy(3), [18.5, 25, 31.5, 38, 44.5, 51])
  near(placedBy(4), [19, 26, 33, 40, 47])
  near(
    typical.events.filter(({ kind }) => kind === 'finishes').map(({ at }) => at),
    [45],
  )

  const { score, autoPoints, finishPoints, rankingPoints, heldSeconds, heldSecondsPerPiece, bonuses } = report
  expect([score.ours, score.theirs].map(({ mean, sd }) => [mean, sd])).toEqual([
    [67, 0],
    [39, 0],
  ])
  expect([autoPoints.ours.mean, autoPoints.theirs.mean]).toEqual([16, 0])
  expect([finishPoints.ours.mean, finishPoints.theirs.mean]).toEqual([5, 0])
  expect([rankingPoints.ours.mean, rankingPoints.theirs.mean]).toEqual([5, 2])
  expect(heldSeconds['mast']!.ours.mean).toBeCloseTo(16.5, 9)
  expect(heldSeconds['mast']!.theirs.mean).toBeCloseTo(12, 9)
  const { ours: own, theirs: other } = heldSecondsPerPiece['mast']!
  expect(own.average.value).toBeCloseTo(16.5 / 4, 9)
  expect(own.marginal.value).toBeCloseTo(83.5 / 4, 9)
  expect(other.average.value).toBeCloseTo(12 / 6, 9)
  expect(other.marginal.value).toBeCloseTo(47.5 / 6, 9)
  const earned = Object.entries(bonuses).map(([id, { ours, theirs }]) => [id, ours.probability, theirs.probability])
  expect(earned).toEqual([
    ['eleven', 1, 1],
    ['twelve', 0, 0],
    ['moored', 1, 1],
    ['aloft', 1, 0],
    ['early', 1, 0],
  ])
})
