import { describe, expect, it } from 'vitest'
import { Playing, Sibling, samplePairings, TraitsOf } from '../../../src/model/picks/scores/index.ts'
import { WinTable } from '../../../src/model/picks/scores/winTable.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import { normalCdf, normalQuantile } from '../../../src/model/scouting/statistics/index.ts'
import { drawn } from '../match/observed.ts'
import { game as reference } from '../reference.ts'
import { game, lots, rated } from './field.ts'

const mean = (values: Float64Array) => values.reduce((sum, own) => sum + own, 0) / values.length

describe('what is expected of an alliance', () => {
  const traits = new TraitsOf(game)
  const expected = (...teams: Parameters<typeof rated>[1][]) =>
    traits.by(teams.map((team, k) => rated(`${k}`, team).rating)).expected[0] as number

  it('is the sum of its robots where there is room for all', () => {
    // 2 · (10 + 12 + 3) + 5 · 2 + 12 · 0.5
    expect(expected({ pier: 10, gantry: 2 }, { pier: 12 }, { pier: 3, davit: 0.5 })).toBeCloseTo(66, 2)
  })

  it('is less by the pieces that find no room, which are tried elsewhere by who goes elsewhere', () => {
    // 30 pieces for 12 places: 18 too many (the Poisson spread adds hardly to that). Who knows the gantry alone loses 5 points each.
    expect(expected({ gantry: 10 }, { gantry: 10 }, { gantry: 10 })).toBeCloseTo(60, 1)
    // Those who go to the pier, too, and hit as often there, get 2 of the 5 points back: 60 + 2 · 18, and 2 for the pier's own piece each.
    expect(expected(...[1, 2, 3].map(() => ({ gantry: 10, pier: 1 })))).toBeCloseTo(60 + 36 + 6, 1)
  })

  it('counts one slot once, by all ways in which robots come to it', () => {
    const chances = [0.9, 0.5, 0.3]
    let points = 0
    for (let ways = 0; ways < 8; ways++) {
      const chance = chances.reduce((all, p, k) => all * ((ways >> k) & 1 ? p : 1 - p), 1)
      points += chance * Math.min(1, (ways & 1) + ((ways >> 1) & 1) + (ways >> 2)) * 12
    }
    expect(expected(...chances.map((davit) => ({ davit })))).toBeCloseTo(points, 9)
  })
})

describe('a table of chances', () => {
  const uniforms = new Uniforms(4)
  const fitted = Float64Array.from({ length: 4000 }, () => 60 * (uniforms.next() - 0.5))
  const leads = fitted.map((lead) => lead + 20 * normalQuantile(uniforms.next()))
  const table = new WinTable({ fitted, leads, whole: false })

  it('agrees with normal leads, for which chances are known', () => {
    // 4,000 matches, half of them near and each used both ways: √(¼ / 4000) = 0.008.
    for (const lead of [-45, -20, -5, 0, 8, 30, 60])
      expect(Math.abs(table.chance(lead) - normalCdf(lead / 20))).toBeLessThan(4 * 0.008)
  })

  it('gives both alliances chances that add up to 1, and never falls', () => {
    let before = 0
    for (let lead = -120; lead <= 120; lead += 0.7) {
      const chance = table.chance(lead)
      expect(chance + table.chance(-lead)).toBeCloseTo(1, 12)
      expect(chance).toBeGreaterThanOrEqual(before)
      before = chance
    }
  })

  it('counts a tie half where points come whole', () => {
    const level = new WinTable({ fitted: new Float64Array(600), leads: new Float64Array(600), whole: true })
    expect(level.chance(0)).toBe(0.5)
    expect(level.chance(0.4)).toBe(0.5)
    expect(level.chance(3)).toBe(1)
  })
})

describe('the sibling', () => {
  const strength = (k: number) => ({ pier: 4 + k, form: [0.8, 0.9, 1, 1.1, 1.2] })
  const teams = Array.from({ length: 18 }, (_, k) => rated(`t${k}`, strength(k)))
  const pairings = samplePairings({ teams, seed: 2, strongest: 18 })

  it('says of alliances that were never simulated what normal luck makes of their expected points, by draw', () => {
    const sibling = new Sibling(game, teams, lots(teams, { pairings, each: 100, sd: 15 }))
    const [ours, theirs] = [sibling.alliance(['t0', 't9', 't17']), sibling.alliance(['t4', 't5', 't6'])]
    const chances = sibling.chances(ours, theirs)
    for (const [d, form] of [0.8, 0.9, 1, 1.1, 1.2].entries()) {
      const lead = 2 * form * (4 + 13 + 21 - 8 - 9 - 10)
      // 2,400 matches: 0.01 of the chance itself, and as much again of the slope.
      expect(Math.abs((chances[d] as number) - normalCdf(lead / (15 * Math.SQRT2)))).toBeLessThan(4 * 0.0145)
    }
    expect(mean(sibling.chances(ours, theirs)) + mean(sibling.chances(theirs, ours))).toBeCloseTo(1, 9)
    // Expected scores: 38 pieces at 2 points; 2,400 matches of luck 15 leave about half a point.
    expect(Math.abs((sibling.scores(ours, theirs)[2] as number) - 76)).toBeLessThan(2)
  })

  it('moves by leaving a tenth of its matches out about as much as their luck says', () => {
    const sibling = new Sibling(game, teams, lots(teams, { pairings, each: 40, sd: 15, seed: 3 }))
    const [ours, theirs] = [sibling.alliance(['t6', 't9', 't11']), sibling.alliance(['t7', 't8', 't9'])]
    const left = Array.from({ length: 10 }, (_, without) => mean(sibling.chances(ours, theirs, { without })))
    const middle = left.reduce((sum, own) => sum + own, 0) / 10
    const error = Math.sqrt(0.9 * left.reduce((sum, own) => sum + (own - middle) ** 2, 0))
    // 960 matches, each used both ways around: at most √(¼ / 960) = 0.016.
    expect(error).toBeGreaterThan(0.0005)
    expect(error).toBeLessThan(0.03)
  })

  it('reads simulated matches of robots with draws, and knows which draw each was met with', () => {
    const six = ['a', 'b', 'c', 'd', 'e', 'f'].map((team) => ({ team, option: drawn(team) }))
    const playing = new Playing({ game: reference, level: 'district', teams: six })
    const play = { ours: ['a', 'b', 'c'], theirs: ['d', 'e', 'f'], seed: 3 }
    const all = playing.play({ ...play, from: 0, to: 60 })
    const later = playing.play({ ...play, from: 40, to: 60 })
    expect([...later.scores]).toEqual([...all.scores.slice(80)])
    expect(new Set(all.met)).toEqual(new Set([0, 1, 2, 3]))
    // The same team in another seat of the same match meets the same draw.
    const turned = playing.play({ ours: ['d', 'e', 'f'], theirs: ['a', 'b', 'c'], seed: 3, from: 0, to: 60 })
    for (let k = 0; k < 60; k++)
      expect([...turned.met.slice(6 * k + 3, 6 * k + 6)]).toEqual([...all.met.slice(6 * k, 6 * k + 3)])
  })
})
