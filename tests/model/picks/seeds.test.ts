import { describe, expect, it } from 'vitest'
import type { Game } from '../../../src/model/documents/types.ts'
import { rankEvent } from '../../../src/model/event/index.ts'
import { samplePairings } from '../../../src/model/picks/scores/index.ts'
import { type MatchSpread, type SeedMatch, seedsOf, spreadsOf } from '../../../src/model/picks/seeds/index.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import { normalCdf, roundRobin } from '../../../src/model/scouting/statistics/index.ts'
import { eventOf, match, result } from '../event/matches.ts'
import { game as field, lots, rated } from './field.ts'

// biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
const ranking: Game['ranking'] = { win: 1, tie: 0, loss: 0, per: 'total', then: [] }

/** A match whose first side wins so many of a thousand simulated matches. */
const wonBy = (chance: number, bonuses = (_: number) => 0): MatchSpread => {
  const count = 1000
  const scores = Float64Array.from({ length: 2 * count }, (_, k) => Number(k >> 1 < chance * count === (k % 2 === 0)))
  return {
    fitted: Float64Array.of(0, 0),
    own: new Float64Array(2 * count),
    whole: true,
    played: {
      met: new Uint16Array(6 * count),
      scores,
      bonuses: Uint32Array.from({ length: 2 * count }, (_, k) => bonuses(k)),
      criteria: new Float64Array(0),
    },
  }
}
const single = (a: string, b: string): SeedMatch => ({
  id: `${a}${b}`,
  ours: [{ team: a, counts: true }],
  theirs: [{ team: b, counts: true }],
})
const nothing = (teams: readonly string[]) => teams.map((team) => ({ team, played: 0, sums: [] }))

/** All pairings of few teams; beats[i][j] above the diagonal. */
function everybody(names: string, beats: readonly (readonly number[])[]) {
  const teams = [...names]
  const pairs = teams.flatMap((a, i) =>
    teams.slice(i + 1).map((b, j) => ({ a, b, chance: beats[i]?.[i + 1 + j] ?? 0 })),
  )
  return {
    standings: nothing(teams),
    matches: pairs.map(({ a, b }) => single(a, b)),
    spreads: pairs.map(({ chance }) => wonBy(chance)),
  }
}

const beats = [
  [0, 3 / 5, 7 / 10, 4 / 5],
  [0, 0, 11 / 20, 13 / 20],
  [0, 0, 0, 3 / 5],
  [0, 0, 0, 0],
]
const seasons = 40_000

describe('final ranks of a round robin', () => {
  it('are those of exact enumeration (checks, section 9.1: rationals from all 64 outcomes, ties split evenly)', () => {
    const { standings, matches, spreads } = everybody('ABCD', beats)
    const report = seedsOf({ game: { ranking, bonuses: [] }, standings, matches, seasons, seed: 1 }, spreads)
    const exact: { [team: string]: { ranks: number[]; expected: number } } = {
      A: { ranks: [286337 / 600000, 34531 / 120000, 4579 / 30000, 4119 / 50000], expected: 368033 / 200000 },
      B: { ranks: [38411 / 150000, 17621 / 60000, 30667 / 120000, 38937 / 200000], expected: 477771 / 200000 },
      C: { ranks: [35283 / 200000, 2019 / 8000, 3 / 10, 27121 / 100000], expected: 533201 / 200000 },
      D: { ranks: [5417 / 60000, 9971 / 60000, 35017 / 120000, 18069 / 40000], expected: 124199 / 40000 },
    }
    expect(report.teams.map(({ team }) => team)).toEqual(['A', 'B', 'C', 'D'])
    for (const { team, ranks, expected, error } of report.teams) {
      const own = exact[team] as (typeof exact)[string]
      for (const [place, chance] of ranks.entries()) {
        const truth = own.ranks[place] as number
        expect(Math.abs(chance - truth)).toBeLessThan(4 * Math.sqrt((truth * (1 - truth)) / seasons))
      }
      expect(error).toBeLessThan(0.006)
      expect(Math.abs(expected - own.expected)).toBeLessThan(4 * error)
    }
  })

  it('are alike where all are (section 9.2)', () => {
    const even = [
      [0, 0.5, 0.5],
      [0, 0, 0.5],
      [0, 0, 0],
    ]
    const { standings, matches, spreads } = everybody('ABC', even)
    const { teams } = seedsOf({ game: { ranking, bonuses: [] }, standings, matches, seasons, seed: 2 }, spreads)
    for (const { ranks } of teams)
      for (const chance of ranks) expect(Math.abs(chance - 1 / 3)).toBeLessThan(4 * Math.sqrt(2 / 9 / seasons))
  })

  it('say what a match is worth: expected rank when it is lost less that when it is won, by enumeration of both', () => {
    const { standings, matches, spreads } = everybody('ABCD', beats)
    const request = { game: { ranking, bonuses: [] }, standings, matches, seasons, seed: 3, us: 'B' }
    const { ours } = seedsOf(request, spreads)
    expect(ours.map((own) => own.match)).toEqual(['AB', 'BC', 'BD'])
    // Of its own matches: (row, column) above the diagonal, and what winning it is there.
    for (const [k, [i, j, won]] of (
      [
        [0, 1, 0],
        [1, 2, 1],
        [1, 3, 1],
      ] as const
    ).entries()) {
      const rankWith = (value: number) => {
        const forced = beats.map((row, r) => row.map((own, c) => (r === i && c === j ? value : own)))
        return roundRobin(forced).each[1]?.expectedRank as number
      }
      const { worth, win } = ours[k] as (typeof ours)[number]
      expect(Math.abs(worth.places - (rankWith(1 - won) - rankWith(won)))).toBeLessThan(4 * worth.error)
      expect(worth.error).toBeLessThan(0.02)
      const chance = won ? (beats[i]?.[j] as number) : 1 - (beats[i]?.[j] as number)
      expect(Math.abs(win - chance)).toBeLessThan(4 * Math.sqrt(0.25 / (seasons / 4)))
    }
  })
})

describe('a bonus beside the win', () => {
  // Two teams meet once. A win pays 2, the bonus 2: with it we are ahead after a loss by lot only, without it after a win alone.
  const bonus = { rankingPoints: 2, points: 0, metric: { kind: 'autoPoints' }, atLeast: 1, scope: 'own' } as const
  const game = { ranking: { ...ranking, win: 2 }, bonuses: [{ ...bonus, id: 'lit', name: 'Lit' }] }
  const standings = nothing(['us', 'them'])

  it('is worth what it moves, and so many times the win’s chance', () => {
    // We win half of the time, and reach the bonus in every match that we win or lose alike: in even ones.
    const spread = wonBy(0.5, (k) => Number(k % 2 === 0 && (k >> 1) % 2 === 0))
    const { ours } = seedsOf({ game, standings, matches: [single('us', 'them')], seasons, seed: 5, us: 'us' }, [spread])
    const [own] = ours as [(typeof ours)[number]]
    const [lit] = own.bonuses as [(typeof own.bonuses)[number]]
    expect(Math.abs(lit.chance - 0.5)).toBeLessThan(4 * 0.005)
    // With the bonus: won 1st, lost even (2 : 2), so 1.25 in the mean. Without: won 1st, lost 2nd, 1.5. Worth ¼ place.
    expect(Math.abs(lit.worth.places - 0.25)).toBeLessThan(4 * lit.worth.error)
    // Winning: with the bonus from 1.5 to 1, without it from 2 to 1: ¾ of a place. So a point of the bonus's chance is worth ⅓ of the win's.
    expect(Math.abs(own.worth.places - 0.75)).toBeLessThan(4 * own.worth.error)
    expect(lit.perWin).toBeCloseTo(lit.worth.places / own.worth.places, 12)
  })

  it('brings no places where the rank is settled', () => {
    const far = [
      { team: 'us', played: 5, sums: [30] },
      { team: 'them', played: 5, sums: [3] },
    ]
    const request = { game, standings: far, matches: [single('us', 'them')], seasons: 400, seed: 5, us: 'us' }
    const { ours, teams } = seedsOf(request, [wonBy(0.5)])
    expect(ours[0]?.worth).toEqual({ places: 0, error: 0 })
    expect(ours[0]?.bonuses[0]?.perWin).toBeNull()
    expect(teams[0]).toMatchObject({ team: 'us', expected: 1, ranks: [1, 0] })
  })
})

describe('the game’s rules', () => {
  it('rank a season as they rank an event: per match, further criteria, a surrogate apart', () => {
    const names = 'a b c d e f g h i'
    const teams = names.split(' ')
    const game = {
      // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
      ranking: { win: 3, tie: 1, loss: 0, per: 'match', then: ['score', 'autoPoints'] } as Game['ranking'],
      bonuses: [
        {
          id: 'lit',
          name: 'Lit',
          rankingPoints: 1,
          points: 0,
          metric: { kind: 'autoPoints' },
          atLeast: 9,
          scope: 'own',
        },
      ] as Game['bonuses'],
    }
    const uniforms = new Uniforms(8)
    const rounds = Array.from({ length: 12 }, (_, k) => {
      const six = teams
        .map((team) => ({ team, at: uniforms.next() }))
        .sort((x, y) => x.at - y.at)
        .slice(0, 6)
      const side = (from: number) =>
        six
          .slice(from, from + 3)
          .map(({ team }, i) => (k === 4 && from + i === 2 ? `${team}*` : team))
          .join(' ')
      const sides = [0, 1].map(() => ({ total: 20 + uniforms.below(40), auto: uniforms.below(15) })) as {
        total: number
        auto: number
      }[]
      return { match: match(k + 1, side(0), side(3)), sides }
    })
    const results = rounds.map(({ match: { id }, sides: [red, blue] }) =>
      result(id, [red!.total, blue!.total], {
        red: { autonomous: red!.auto },
        blue: { autonomous: blue!.auto },
        bonuses: [red!.auto >= 9 ? ['lit'] : [], blue!.auto >= 9 ? ['lit'] : []],
      }),
    )
    const official = rankEvent({
      game,
      event: eventOf(names),
      matches: rounds.map((round) => round.match),
      results,
      seed: 1,
    })
    // The first half has been played, the second is certain: one simulated match each.
    const before = rankEvent({
      game,
      event: eventOf(names),
      matches: rounds.map((round) => round.match),
      results: results.slice(0, 6),
      seed: 1,
    })
    const spreads = rounds.slice(6).map(
      ({ sides }): MatchSpread => ({
        fitted: Float64Array.of(0, 0),
        own: Float64Array.of(0, 0),
        whole: true,
        played: {
          met: new Uint16Array(6),
          scores: Float64Array.from(sides, ({ total }) => total),
          bonuses: Uint32Array.from(sides, ({ auto }) => Number(auto >= 9)),
          criteria: Float64Array.from(sides.flatMap(({ total, auto }) => [total, auto])),
        },
      }),
    )
    const matches = rounds.slice(6).map(({ match: { id, red, blue } }): SeedMatch => ({ id, ours: red, theirs: blue }))
    const { teams: seeds } = seedsOf({ game, standings: before.rows, matches, seasons: 3, seed: 1 }, spreads)
    expect(official.rows.some(({ byLot }) => byLot)).toBe(false)
    expect(seeds.map(({ team, expected }) => [team, expected])).toEqual(
      official.rows.map(({ team, rank }) => [team, rank]),
    )
    expect(before.rows.map(({ team }) => team)).not.toEqual(official.rows.map(({ team }) => team))
  })
})

describe('matches to come', () => {
  it('hold one draw of the teams for a season, and their scores follow it', () => {
    // Two draws: with the first our three bring 20 more, with the second 20 less. One match, luck 15 each: Φ(±20 / 21).
    const forms = { strong: [1.5, 0.5], steady: [1, 1] }
    const teams = [...'abcdef'].map((team, k) =>
      rated(team, { pier: k < 3 ? 20 / 3 : 20 / 3, form: k < 3 ? forms.strong : forms.steady }),
    )
    const pairing = { ours: ['a', 'b', 'c'], theirs: ['d', 'e', 'f'] }
    const others = samplePairings({ teams, seed: 3, pairings: 7 })
    const spreads = spreadsOf(field, teams, lots(teams, { pairings: [pairing, ...others], each: 500, sd: 15 }))
    const slots = (side: readonly string[]) => side.map((team) => ({ team, counts: true }))
    const matches = [{ id: 'q1', ours: slots(pairing.ours), theirs: slots(pairing.theirs) }]
    const request = {
      game: { ranking, bonuses: [] },
      standings: nothing([...'abcdef']),
      matches,
      seasons: 8000,
      seed: 4,
    }
    const { ours, teams: seeds } = seedsOf({ ...request, us: 'a' }, spreads.slice(0, 1))
    const high = normalCdf(20 / (15 * Math.SQRT2))
    // Half of the seasons each; 500 simulated matches leave 0.022.
    expect(Math.abs((ours[0]?.win as number) - 0.5)).toBeLessThan(4 * 0.022)
    const alone = (k: number) => {
      const { fitted, ...rest } = spreads[0] as MatchSpread
      const one = seedsOf({ ...request, us: 'a' }, [{ ...rest, fitted: fitted.slice(2 * k, 2 * k + 2) }])
      return one.ours[0]?.win as number
    }
    expect(Math.abs(alone(0) - high)).toBeLessThan(4 * 0.022)
    expect(Math.abs(alone(1) - (1 - high))).toBeLessThan(4 * 0.022)
    // Of six who are level in threes the expected rank is 2 when won and 5 when lost; the error is that of two draws.
    expect(Math.abs((seeds.find(({ team }) => team === 'a')?.expected as number) - 3.5)).toBeLessThan(4 * 3 * 0.022)
    expect(seeds[0]?.error).toBeGreaterThan(0.5)
  })
})
