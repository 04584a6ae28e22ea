import { describe, expect, it } from 'vitest'
import { Strengths } from '../../../src/model/picks/order/index.ts'
import {
  bracketOf,
  compareOffer,
  playBracket,
  playoffChances,
  seriesChance,
  substitutions,
  TieLuck,
} from '../../../src/model/picks/playoffs/index.ts'
import { type RatedTeam, Sibling, samplePairings } from '../../../src/model/picks/scores/index.ts'
import { selectionAfter } from '../../../src/model/picks/selection/index.ts'
import { stillFree } from '../../../src/model/picks/waiting/index.ts'
import { game, lots, rated } from './field.ts'

const games = [
  [0.5, 0.6, 0.7, 0.8],
  [0.4, 0.5, 0.55, 0.65],
  [0.3, 0.45, 0.5, 0.6],
  [0.2, 0.35, 0.4, 0.5],
]
const chance = (a: number, b: number) => games[a - 1]?.[b - 1] as number
const runs = 40_000

/** How often each alliance wins, by playing. */
function played(format: Parameters<typeof bracketOf>[0]): number[] {
  const [ties, luck] = [bracketOf(format), new TieLuck(5)]
  const wins = new Array<number>(format.alliances).fill(0)
  for (let run = 0; run < runs; run++) wins[playBracket(ties, chance, { luck, run }).winner - 1]! += 1 / runs
  return wins
}

/** Whoever comes first of two with its chance, in every way that it can go. */
type Branch = { winner: number; loser: number; weight: number }
const both = (a: number, b: number, of: (p: number) => number = (p) => p): Branch[] => [
  { winner: a, loser: b, weight: of(chance(a, b)) },
  { winner: b, loser: a, weight: of(chance(b, a)) },
]
const ofThree = (p: number) => p * p * (3 - 2 * p)

const near = (found: readonly number[], exact: readonly number[]) => {
  expect(exact.reduce((sum, own) => sum + own, 0)).toBeCloseTo(1, 12)
  for (const [k, own] of found.entries()) {
    const truth = exact[k] as number
    expect(Math.abs(own - truth)).toBeLessThan(4 * Math.sqrt((truth * (1 - truth)) / runs))
  }
}

describe('a bracket with constant chances', () => {
  it('is won as often as all its outcomes say: double elimination of four, written out by hand', () => {
    const exact = [0, 0, 0, 0]
    for (const one of both(1, 4))
      for (const two of both(2, 3))
        for (const upper of both(one.winner, two.winner))
          for (const low of both(one.loser, two.loser))
            for (const lower of both(upper.loser, low.winner))
              for (const last of both(upper.winner, lower.winner, ofThree))
                exact[last.winner - 1]! +=
                  one.weight * two.weight * upper.weight * low.weight * lower.weight * last.weight
    near(played({ format: 'double', alliances: 4, games: 3 }), exact)
  })

  it('is so where ties are best of three and one lost tie is enough', () => {
    const exact = [0, 0, 0, 0]
    for (const one of both(1, 4, ofThree))
      for (const two of both(2, 3, ofThree))
        for (const last of both(one.winner, two.winner, ofThree))
          exact[last.winner - 1]! += one.weight * two.weight * last.weight
    near(played({ format: 'bestOf', alliances: 4, games: 3 }), exact)
  })

  it('lets the first alliance wait where there are three', () => {
    const exact = [0, 0, 0]
    for (const two of both(2, 3))
      for (const upper of both(1, two.winner))
        for (const lower of both(upper.loser, two.loser))
          for (const last of both(upper.winner, lower.winner))
            exact[last.winner - 1]! += two.weight * upper.weight * lower.weight * last.weight
    near(played({ format: 'double', alliances: 3, games: 1 }), exact)
  })

  it('puts everybody out after two lost ties, the final apart, whoever wins', () => {
    for (const alliances of [2, 3, 4, 5, 6, 7, 8, 12, 16]) {
      const ties = bracketOf({ format: 'double', alliances })
      // Of n alliances n − 2 lose twice and one comes to the final having lost once: 2 (n − 2) + 1 ties, and the final.
      expect(ties.length).toBe(2 * alliances - 2)
      const lost = new Map<number, number>()
      const winners: number[] = []
      const losers: number[] = []
      for (const [k, { from }] of ties.entries()) {
        const [a, b] = from.map((each) =>
          each.kind === 'alliance' ? each.number : (each.kind === 'winner' ? winners : losers)[each.tie],
        ) as [number, number]
        expect(a).not.toBe(b)
        for (const each of [a, b]) expect(lost.get(each) ?? 0).toBeLessThan(2)
        const upset = (k * 7) % 3 === 0
        ;[winners[k], losers[k]] = a < b !== upset ? [a, b] : [b, a]
        lost.set(losers[k] as number, (lost.get(losers[k] as number) ?? 0) + 1)
      }
    }
    expect(bracketOf({ format: 'bestOf', alliances: 8, games: 3 }).length).toBe(7)
  })

  it('wins a series by the binomial', () => {
    for (const p of [0, 0.3, 0.5, 0.62, 1]) {
      expect(seriesChance(p, 1)).toBeCloseTo(p, 12)
      expect(seriesChance(p, 3)).toBeCloseTo(ofThree(p), 12)
      expect(seriesChance(p, 5)).toBeCloseTo(p ** 3 * (1 + 3 * (1 - p) + 6 * (1 - p) ** 2), 12)
    }
  })
})

const strengthsOf = (teams: readonly RatedTeam[], sd: number) =>
  new Strengths(
    new Sibling(
      game,
      teams,
      lots(teams, { pairings: samplePairings({ teams, seed: 4, strongest: teams.length }), each: 60, sd }),
    ),
  )

describe('the chance to win the event', () => {
  const format = { format: 'double', alliances: 4 } as const

  it('is the same for alliances that are the same, and goes with one draw through a whole bracket', () => {
    // Alliance 1 is far ahead with one draw and far behind with the other: it wins half of the events, not half of the ties.
    const teams = [...'abcdefghijkl'].map((team, k) => rated(team, { pier: 20, form: k < 3 ? [1.6, 0.4] : [1, 1] }))
    const names = teams.map(({ team }) => team)
    const alliances = [0, 3, 6, 9].map((from) => names.slice(from, from + 3))
    const found = playoffChances({ strengths: strengthsOf(teams, 4), format, alliances, runs: 6000, seed: 1 })
    expect(found.reduce((sum, { wins }) => sum + wins, 0)).toBeCloseTo(1, 9)
    expect(Math.abs((found[0]?.wins as number) - 0.5)).toBeLessThan(0.03)
    for (const { wins } of found.slice(1)) expect(Math.abs(wins - 1 / 6)).toBeLessThan(0.03)
  })

  it('tells which three of four play best', () => {
    // Two gantry robots fill its twelve places; the third is worth less than who brings little to the pier.
    const teams = [
      rated('a', { gantry: 9 }),
      rated('b', { gantry: 8 }),
      rated('c', { gantry: 7 }),
      rated('d', { pier: 10 }),
      ...[...'efghij'].map((team) => rated(team, { pier: 12, gantry: 3 })),
    ]
    const request = {
      strengths: strengthsOf(teams, 10),
      format: { format: 'bestOf', alliances: 3, games: 1 } as const,
      runs: 2000,
      seed: 2,
    }
    const alliances = [
      ['a', 'b', 'c', 'd'],
      ['e', 'f', 'g'],
      ['h', 'i', 'j'],
    ]
    const found = substitutions({ ...request, alliances }, 1)
    expect(found.length).toBe(4)
    expect([...(found[0]?.robots ?? [])].sort()).toEqual(['a', 'b', 'd'])
    expect([...(found.at(-1)?.robots ?? [])].sort()).toEqual(['a', 'b', 'c'])
    expect(playoffChances({ ...request, alliances })[0]?.robots).toEqual(['a', 'b', 'd'])
  })
})

describe('an offer', () => {
  const rules = { alliances: 2, size: 3, serpentine: true, captainsInvitable: true, afterDeclining: 'captain' } as const
  const format = { format: 'bestOf', alliances: 2, games: 1 } as const
  const offerTo = (points: { [team: string]: number }, us: string) => {
    const teams = Object.entries(points).map(([team, own]) => rated(team, { pier: own / 2 }))
    const { selection } = selectionAfter(rules, Object.keys(points), [])
    const worth = new Map(Object.entries(points))
    // Next to no luck: the stronger alliance wins.
    return compareOffer({ strengths: strengthsOf(teams, 0.5), selection, us, worth, format, runs: 40, seed: 3 })
  }

  it('is to be accepted where our own alliance would lose', () => {
    // a asks b. Together with f: 40 + 30 + 12 = 82 against c d e = 47. Apart: a takes c, b takes d and e, a takes f: 71 against 57.
    const offer = offerTo({ a: 40, b: 30, c: 19, d: 15, e: 13, f: 12 }, 'b')
    expect(offer.accept.wins).toBe(1)
    expect(offer.decline).toMatchObject({ wins: 0, plays: 1 })
    expect(offer.difference.wins).toBe(1)
    expect(offer.accept.error).toBeGreaterThan(0)
  })

  it('is to be declined where we win without', () => {
    // Together a b f = 52 against c d e = 75. Apart a takes c and f: 20 + 28 + 8 = 56 against b d e = 24 + 25 + 22 = 71.
    expect(offerTo({ a: 20, b: 24, c: 28, d: 25, e: 22, f: 8 }, 'b').difference.wins).toBe(-1)
  })

  it('leaves us out where we are no captain and nobody may ask again', () => {
    const offer = offerTo({ a: 30, b: 24, c: 28, d: 25, e: 22, f: 8 }, 'd')
    expect(offer.decline).toMatchObject({ wins: 0, plays: 0 })
  })
})

describe('who will still be there', () => {
  it('is as likely as others’ own orders make it: two draws, enumerated', () => {
    // x is worth 20 or 2 to the alliance that chooses before us, with even chances; y 10, z 1. It takes one of them.
    const teams = [
      rated('a', { pier: 30, form: [1, 1] }),
      rated('b', { pier: 30, form: [1, 1] }),
      rated('x', { pier: 10, form: [1, 0.1] }),
      rated('y', { pier: 5, form: [1, 1] }),
      rated('z', { pier: 0.5, form: [1, 1] }),
      rated('w', { pier: 0.4, form: [1, 1] }),
    ]
    const rules = {
      alliances: 2,
      size: 3,
      serpentine: true,
      captainsInvitable: false,
      afterDeclining: 'captain',
    } as const
    const { selection } = selectionAfter(
      rules,
      teams.map(({ team }) => team),
      [],
    )
    const { sibling } = strengthsOf(teams, 5)
    const found = new Map(
      stillFree({ sibling, selection, us: 'b', runs: 600, seed: 1 }).map((each) => [each.team, each]),
    )
    for (const team of ['x', 'y']) {
      const { chance: own, error } = found.get(team) as { chance: number; error: number }
      expect(Math.abs(own - 0.5)).toBeLessThan(4 * error)
      expect(error).toBeCloseTo(Math.sqrt(0.25 / 600), 3)
    }
    expect(found.get('z')?.chance).toBe(1)
    // On turn ourselves: b takes two before a has its next turn, and even at 2 points x comes before z.
    const ours = new Map(
      stillFree({ sibling, selection, us: 'a', runs: 600, seed: 1 }).map((each) => [each.team, each.chance]),
    )
    expect(ours.get('y')).toBe(0)
    expect(ours.get('x')).toBe(0)
    expect(ours.get('z')).toBe(1)
  })
})
