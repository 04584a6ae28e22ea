import { describe, expect, it, test } from 'vitest'
import { simulate } from '../../../src/model/match/index.ts'
import {
  type Calibration,
  type Records,
  type SeasonRequest,
  season,
  seasonReport,
} from '../../../src/model/match/scores/index.ts'
import { fittedScores } from '../../../src/model/match/scores/line.ts'
import { ScoreSpread } from '../../../src/model/match/scores/spread.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { game, optionNamed } from '../reference.ts'

const uniforms = new Uniforms(11)
/** Box & Muller (1958). */
const normal = () => Math.sqrt(-2 * Math.log(uniforms.next())) * Math.cos(2 * Math.PI * uniforms.next())

/** Records of `count` matches: the scores of a match with the number k of draw k % draws. */
function recordsOf(count: number, draws: number, scores: (draw: number) => [number, number]): Records {
  const all = Array.from({ length: count }, (_, k) => scores(k % draws))
  return {
    draw: Uint16Array.from(all, (_, k) => k % draws),
    ours: Float64Array.from(all, ([ours]) => ours),
    theirs: Float64Array.from(all, ([, theirs]) => theirs),
    oursExtra: new Float64Array(count),
    theirsExtra: new Float64Array(count),
  }
}

describe('expected scores by draw', () => {
  const expected = Float64Array.from({ length: 50 }, (_, d) => d)
  const errorOf = (off: (d: number) => number, each: number) => {
    const truth = Float64Array.from(expected, (x, d) => 10 + 2 * x + off(d))
    const { draw, ours } = recordsOf(50 * each, 50, (d) => [truth[d]! + 8 * normal(), 0])
    const fitted = fittedScores(expected, draw, ours)
    return Math.sqrt(fitted.reduce((sum, own, d) => sum + (own - truth[d]!) ** 2, 0) / 50)
  }

  it('keep to the line where draws lie on it, far nearer the truth than each draw’s own mean', () => {
    // Own means would be off by 8 / √10 = 2.5, the line alone by about 8 · √(2 / 500) = 0.5.
    expect(errorOf(() => 0, 10)).toBeLessThan(1.2)
  })

  it('go to the draw’s own mean where draws lie off the line', () => {
    // The line alone would be off by 6; own means of 400 matches by 8 / 20 = 0.4.
    expect(errorOf((d) => (d % 2 ? 6 : -6), 400)).toBeLessThan(0.55)
  })
})

describe('scores that are drawn', () => {
  it('win as often as a normal lead does, at each draw of the robots, though its matches are few', () => {
    // Leads N(x − 5, 10²) for x = 0 … 10 of closed-form points: 100 matches a draw, of which 500 nearby are used.
    const draws = 11
    const records = recordsOf(100 * draws, draws, (d) => [50 + d + 7 * normal(), 55 + Math.sqrt(51) * normal()])
    const expected = { ours: Float64Array.from({ length: draws }, (_, d) => d), theirs: new Float64Array(draws) }
    const spread = new ScoreSpread({ records, expected })
    for (const [draw, chance] of [
      [0, 0.3085],
      [5, 0.5],
      [10, 0.6915],
    ] as const) {
      let [wins, all] = [0, 0]
      spread.each(draw, (record) => {
        wins += Number(spread.ours(record, draw) > spread.theirs(record, draw))
        all++
      })
      expect(all).toBeGreaterThanOrEqual(500)
      // Φ(−0.5) and Φ(0.5); the line's own error is 10 / √1100 at its middle and twice that at its ends: 0.02 in chance.
      expect(Math.abs(wins / all - chance)).toBeLessThan(4 * Math.hypot(0.5 / Math.sqrt(all), 0.024))
    }
  })

  it('are those of the simulated matches where there is one draw, ties included', () => {
    const records = recordsOf(1000, 1, () => [Math.round(3 * uniforms.next()), 1])
    const spread = new ScoreSpread({ records, expected: { ours: new Float64Array(1), theirs: new Float64Array(1) } })
    const seen = new Set<number>()
    for (let k = 0; k < 1000; k++) seen.add(spread.pick(0, Math.ceil((2 ** 32 * k) / 1000)))
    expect(seen.size).toBe(1000)
    for (const record of seen) expect(spread.ours(record, 0)).toBe(records.ours[record])
  })
})

describe('a season', () => {
  const calm = { ...game, ranking: { ...game.ranking, win: 2, tie: 1, loss: 0 } }
  const teams = ['a', 'b', 'c', 'd', 'e', 'f'].map((team) => ({ team, draws: [optionNamed('petrel-best')] }))
  const matches = Array.from({ length: 12 }, (_, k) => ({
    id: `${k}`,
    ours: ['a', 'b', 'c'],
    theirs: ['d', 'e', 'f'],
  }))
  const request: SeasonRequest = {
    game: calm,
    teams,
    matches,
    seasons: 20_000,
    seed: 3,
    replicates: 500,
    precision: 0.01,
  }

  it('pays as binomial luck does: twelve matches, each won with the same chance', () => {
    // 60 of 100 simulated matches are won: wins are binomial with n = 12, p = 0.6.
    const coins = (): Calibration => ({
      records: recordsOf(100, 1, () => [0, 0]),
      expected: { ours: new Float64Array(1), theirs: new Float64Array(1) },
    })
    const calibrations = matches.map(() => coins())
    for (const { records } of calibrations) records.ours.set(Array.from({ length: 100 }, (_, k) => (k < 60 ? 1 : -1)))
    const report = seasonReport(request, calibrations)
    expect(report.matches[0]).toMatchObject({
      win: expect.closeTo(0.6, 9),
      rankingPoints: { ours: expect.closeTo(1.2, 9) },
    })
    const own = report.teams[0]!
    expect(own.matches).toBe(12)
    // Two points a win: mean 2 · 12 · 0.6, sd 2 · √(12 · 0.6 · 0.4). Quantiles of the binomial: 5, 7 and 9 wins.
    const sd = 2 * Math.sqrt(12 * 0.24)
    expect(Math.abs(own.rankingPoints.mean - 14.4)).toBeLessThan((4 * sd) / Math.sqrt(20_000))
    expect(Math.abs(own.rankingPoints.sd - sd)).toBeLessThan((4 * sd) / Math.sqrt(2 * 20_000))
    expect(own.rankingPoints).toMatchObject({ p10: 10, p50: 14, p90: 18 })
    // What one alliance wins, the other loses.
    expect(report.teams[3]!.rankingPoints.mean).toBeCloseTo(24 - own.rankingPoints.mean, 9)
  })

  it('holds one draw of the teams through all its matches, so that good seasons stay good', () => {
    // With draw 0 all matches are won, with draw 1 all are lost: totals are 24 or 0, sd 12.
    const records = recordsOf(1000, 2, (draw) => (draw === 0 ? [2, 1] : [1, 2]))
    const expected = { ours: Float64Array.of(2, 1), theirs: Float64Array.of(1, 2) }
    const report = seasonReport(
      { ...request, teams: teams.map(({ team, draws }) => ({ team, draws: [...draws, ...draws] })) },
      matches.map(() => ({ records, expected })),
    )
    expect(report.matches[0]!.win).toBeCloseTo(0.5, 12)
    expect(report.teams[0]!.rankingPoints).toMatchObject({ mean: 12, p10: 0, p90: 24 })
  })
})

const ids = ['cormorant-best', 'petrel-best', 'gannet-keeper', 'cormorant-always', 'petrel-pier', 'gannet-skip']

describe('beside the simulation', () => {
  const asked = (matches: SeasonRequest['matches'], teams: readonly string[], precision: number): SeasonRequest => ({
    game,
    teams: teams.map((team) => ({ team, draws: [optionNamed(team)] })),
    matches,
    seasons: 1000,
    seed: 5,
    replicates: 20_000,
    precision,
  })

  it('a match has its chances, scores and ranking points, as far off as it says', { timeout: 120_000 }, () => {
    const matches = [{ id: 'one', ours: ids.slice(0, 3), theirs: ids.slice(3) }]
    const { matches: said } = season(asked(matches, ids, 0.02))
    const [own] = said
    const { win, tie, score, rankingPoints } = simulate({
      game,
      ours: ids.slice(0, 3).map(optionNamed),
      theirs: ids.slice(3).map(optionNamed),
      replicates: 3000,
      seed: 99,
    })
    const gap = own!.win + own!.tie / 2 - win.probability - tie.probability / 2
    expect(Math.abs(gap)).toBeLessThan(4 * Math.hypot(own!.standardError, win.standardError))
    const off = (mean: number, measured: { mean: number; sd: number }) =>
      Math.abs(mean - measured.mean) / (measured.sd * Math.sqrt(1 / own!.replicates + 1 / 3000))
    expect(off(own!.score.ours.mean, score.ours)).toBeLessThan(4)
    expect(off(own!.score.theirs.mean, score.theirs)).toBeLessThan(4)
    expect(off(own!.rankingPoints.ours, rankingPoints.ours)).toBeLessThan(4)
    expect(own!.replicates % 500).toBe(0)
    expect(own!.replicates).toBeLessThan(20_000)
  })

  test.runIf(inLongForm)('40 random matches have chances within 1 percentage point', { timeout: 3_600_000 }, () => {
    const names = [
      ...ids,
      'gannet-best',
      'petrel-plain',
      'dunlin-guess',
      'petrel-defender',
      'cormorant-skip',
      'petrel-skip',
    ]
    const matches = Array.from({ length: 40 }, (_, k) => {
      const drawn = [...names].map((name) => ({ name, at: uniforms.next() })).sort((a, b) => a.at - b.at)
      const six = drawn.slice(0, 6).map(({ name }) => name)
      return { id: `${k}`, ours: six.slice(0, 3), theirs: six.slice(3) }
    })
    const { matches: said, error } = season(asked(matches, names, 0.0035))
    const gaps = said.map((own, k) => {
      const { ours, theirs } = matches[k]!
      const request = { game, ours: ours.map(optionNamed), theirs: theirs.map(optionNamed), seed: 1000 + k }
      const { win, tie } = simulate({ ...request, replicates: 100_000 })
      return own.win + own.tie / 2 - win.probability - tie.probability / 2
    })
    const rms = Math.sqrt(gaps.reduce((sum, gap) => sum + gap * gap, 0) / gaps.length)
    console.log('percentage points off:', gaps.map((gap) => (100 * gap).toFixed(2)).join(' '), 'rms', 100 * rms, error)
    for (const gap of gaps) expect(Math.abs(gap)).toBeLessThan(0.01)
    // The simulation's own error is at most 0.0016; the rms of 40 scatters by a ninth.
    expect(rms).toBeLessThan(1.5 * Math.hypot(error.total, 0.0016))
  })
})
