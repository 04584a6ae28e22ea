import { describe, expect, test } from 'vitest'
import { rankEvent } from '../../../src/model/event/index.ts'
import type { RankedGame } from '../../../src/model/event/ranking/earned.ts'
import { eventOf, match, result } from './matches.ts'

/** Win 3, tie 1, loss 0; a bonus of 1; then score, finish points, points in autonomous. Compared by the mean a match. */
const game: RankedGame = {
  bonuses: [
    {
      id: 'moored',
      name: 'Moored',
      rankingPoints: 1,
      points: 0,
      metric: { kind: 'pieces', goals: ['piers'] },
      atLeast: { local: 18 },
      scope: 'own',
    },
  ],
  // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
  ranking: { win: 3, tie: 1, loss: 0, per: 'match', then: ['score', 'finishPoints', 'autoPoints'] },
}

/**
 * Eight teams A to H, worked out by hand. Three plays count: 1 (its first play is voided), 2 and 3.
 *
 * | match | red | blue | score | finishes | autonomous | moored |
 * | --- | --- | --- | --- | --- | --- | --- |
 * | 1, play 1 (voided) | A B C | D E F | 99 : 0 | | | |
 * | 1, play 2 | A B C | D E F | 40 : 80 | 10, 20 | 12, 8 | blue |
 * | 2 | G D A* | H B- E | 50 : 50 | 6, 14 | 9, 10 | – |
 * | 3 | C G F | H! D B | 80 : 30 | 22, 2 | 20, 5 | red |
 *
 * Ranking points, with what counts of score / finishes / autonomous:
 * A: 1: lost 0 (40, 10, 12); 2: surrogate, nothing.                  1 match:  0;     40;     10;   12
 * B: 1: lost 0 (40, 10, 12); 2: absent 0; 3: lost 0 (30, 2, 5).      3 matches: 0;    70/3;   4;    17/3
 * C: 1: lost 0 (40, 10, 12); 3: won 3 + 1 (80, 22, 20).              2 matches: 2;    60;     16;   16
 * D: 1: won 3 + 1 (80, 20, 8); 2: tied 1 (50, 6, 9); 3: lost 0 (30, 2, 5).  3: 5/3;   160/3;  28/3; 22/3
 * E: 1: won 3 + 1 (80, 20, 8); 2: tied 1 (50, 14, 10).               2 matches: 5/2;  65;     17;   9
 * F: 1: won 3 + 1 (80, 20, 8); 3: won 3 + 1 (80, 22, 20).            2 matches: 4;    80;     21;   14
 * G: 2: tied 1 (50, 6, 9); 3: won 3 + 1 (80, 22, 20).                2 matches: 5/2;  65;     14;   29/2
 * H: 2: tied 1 (50, 14, 10); 3: disqualified 0.                      2 matches: 1/2;  25;     7;    5
 *
 * By the mean: F 4, then E and G 2.5 (scores level at 65; finishes, the third criterion: E 17, G 14), C 2, D 1.667, H 0.5, then A and B 0 (score: A 40, B 23.3).
 */
const matches = [
  match(1, 'A B C', 'D E F'),
  match(1, 'A B C', 'D E F', { id: 'q1-2', play: 2, voids: 'q1' }),
  match(2, 'G D A*', 'H B- E'),
  match(3, 'C G F', 'H! D B'),
]
const results = [
  result('q1', [99, 0]),
  result('q1-2', [40, 80], {
    red: { finishes: 10, autonomous: 12 },
    blue: { finishes: 20, autonomous: 8 },
    bonuses: [[], ['moored']],
  }),
  result('q2', [50, 50], { red: { finishes: 6, autonomous: 9 }, blue: { finishes: 14, autonomous: 10 } }),
  result('q3', [80, 30], {
    red: { finishes: 22, autonomous: 20 },
    blue: { finishes: 2, autonomous: 5 },
    bonuses: [['moored'], []],
  }),
]
const request = { game, event: eventOf('A B C D E F G H', { level: 'local' }), matches, results, seed: 1 }
const order = (of: ReturnType<typeof rankEvent>) => of.rows.map(({ team }) => team).join(' ')

describe('a ranking worked out by hand, with a replay, a surrogate, a no-show and a disqualification', () => {
  const ranking = rankEvent(request)
  const row = (team: string) => ranking.rows.find((each) => each.team === team)!

  test('has its order', () => {
    expect(order(ranking)).toBe('F E G C D H A B')
    expect(ranking.rows.map(({ rank }) => rank)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
    expect(ranking).toMatchObject({ counted: 3, voided: 1, waiting: 0, untold: [] })
  })

  test.each([
    ['A', 1, [0, 40, 10, 12]],
    ['B', 3, [0, 70, 12, 17]],
    ['C', 2, [4, 120, 32, 32]],
    ['D', 3, [5, 160, 28, 22]],
    ['E', 2, [5, 130, 34, 18]],
    ['F', 2, [8, 160, 42, 28]],
    ['G', 2, [5, 130, 28, 29]],
    ['H', 2, [1, 50, 14, 10]],
  ] as const)('has of %s %i matches with the sums %j', (team, played, sums) => {
    expect(row(team)).toMatchObject({ played, sums, values: sums.map((sum) => sum / played) })
  })

  test('tells who won, tied and lost, and who was a surrogate, absent or disqualified', () => {
    expect(row('A')).toMatchObject({ won: 0, tied: 0, lost: 1, apart: 1 })
    expect(row('B')).toMatchObject({ lost: 2, absent: 1, apart: 0 })
    expect(row('H')).toMatchObject({ tied: 1, lost: 1, disqualified: 1 })
    expect(row('F')).toMatchObject({ won: 2, lost: 0 })
  })

  test('says which criterion decided: the third between E and G, the score between A and B', () => {
    expect(ranking.rows.map(({ decidedBy }) => decidedBy)).toEqual([0, 2, 0, 0, 0, 0, 1, null])
    expect(ranking.rows.some(({ byLot }) => byLot)).toBe(false)
  })
})

/**
 * Two matches of I J K against L M N. By the mean, I has 3 + 0, L 0 + 3; scores 50 + 30 and 30 + 50; finishes 9 + 7 and 6 + 10;
 * autonomous 14 + 4 and 8 + 9. So ranking points (1.5), score (40) and finishes (8) are level, and autonomous decides: 9 against 8.5.
 */
test('a tie is broken by the last criterion, and what is level in all by lot', () => {
  const two = [match(1, 'I J K', 'L M N'), match(2, 'I J K', 'L M N')]
  const counted = [
    result('q1', [50, 30], { red: { finishes: 9, autonomous: 14 }, blue: { finishes: 6, autonomous: 8 } }),
    result('q2', [30, 50], { red: { finishes: 7, autonomous: 4 }, blue: { finishes: 10, autonomous: 9 } }),
  ]
  const of = (seed: number) =>
    rankEvent({ game, event: eventOf('N M L K J I', { level: 'local' }), matches: two, results: counted, seed })
  const ranking = of(1)
  expect(
    ranking.rows
      .slice(0, 3)
      .map(({ team }) => team)
      .sort(),
  ).toEqual(['I', 'J', 'K'])
  expect(ranking.rows.map(({ decidedBy }) => decidedBy)).toEqual([null, null, 3, null, null, null])
  expect(ranking.rows.map(({ byLot }) => byLot)).toEqual([true, true, true, true, true, true])
  expect(ranking.rows[0]?.values).toEqual([1.5, 40, 8, 9])
  expect(ranking.rows[3]?.values).toEqual([1.5, 40, 8, 8.5])
  expect(order(of(1))).toBe(order(ranking))
  // Another seed draws another lot: of 20 seeds all six orders of three come up, and none crosses the criterion.
  const orders = Array.from({ length: 60 }, (_, seed) => order(of(seed)))
  expect(new Set(orders.map((each) => each.slice(0, 5))).size).toBe(6)
  expect(orders.filter((each) => !/^[IJK] [IJK] [IJK] [LMN] [LMN] [LMN]$/.test(each))).toEqual([])
})

test('by totals a team with more matches is ahead of one with a better mean', () => {
  const total = { ...game, ranking: { ...game.ranking, per: 'total' as const } }
  // The sums above: F 8, then D, E and G 5 (scores 160, 130, 130; finishes 34 and 28), C 4, H 1, A and B 0 (scores 40 and 70).
  expect(order(rankEvent({ ...request, game: total }))).toBe('F D E G C H B A')
})

test('a match without a result waits, and what a result does not tell is said', () => {
  const bare = [
    { match: 'q1-2', red: { points: { total: 40 } }, blue: { points: { total: 60 }, pieces: { piers: 18 } } },
  ]
  const ranking = rankEvent({ ...request, results: bare })
  expect(ranking).toMatchObject({ counted: 1, waiting: 2, voided: 1 })
  // Blue has 18 pieces, which the bonus asks for; of red nothing is told.
  expect(ranking.untold).toEqual([
    { match: 'q1-2', alliance: 'red', bonuses: ['moored'], criteria: [2, 3] },
    { match: 'q1-2', alliance: 'blue', bonuses: [], criteria: [2, 3] },
  ])
  expect(ranking.rows.find(({ team }) => team === 'D')?.sums[0]).toBe(4)
})

test('a third of a point is as much from two matches as from one', () => {
  // X ties one match of three, Y two of six: 1/3 each, which binary fractions would tell apart in other sums.
  const many = [
    match(1, 'X A B', 'Y C D'),
    ...[2, 3].map((number) => match(number, 'X A B', 'E C D')),
    match(4, 'Y A B', 'E C D'),
    ...[5, 6, 7, 8].map((number) => match(number, 'Y A B', 'E C D')),
  ]
  const counts = many.map(({ id }, index) => result(id, index === 0 || index === 3 ? [10, 10] : [10, 11]))
  const ranking = rankEvent({ game, event: eventOf('X Y'), matches: many, results: counts, seed: 3 })
  expect(ranking.rows.map(({ played, sums }) => [played, sums[0], sums[1]]).sort()).toEqual([
    [3, 1, 30],
    [6, 2, 60],
  ])
  expect(ranking.rows.map(({ byLot }) => byLot)).toEqual([true, true])
})
