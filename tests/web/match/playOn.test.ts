import { beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { explainRanking } from '../../../web/screens/match/explain.ts'
import { pairedDifference } from '../../../web/screens/match/paired.ts'
import { precisionSaid } from '../../../web/screens/match/said.ts'
import { allWords } from '../../../web/words/catalogue.ts'
import { playOn } from '../../../web/worker/match.ts'
import type { Lineup } from '../../../web/worker/protocol.ts'

const [shearwater, kittiwake, puffin] = ['shearwater-best', 'kittiwake-best', 'puffin-best'].map(optionOf)
const first: Lineup = { ours: [shearwater!, puffin!, puffin!], theirs: [puffin!, puffin!, shearwater!] }
const second: Lineup = { ours: [kittiwake!, puffin!, puffin!], theirs: first.theirs }
const level = 'local'
const silent = () => {}

/** A line-up's matches in parts: the last answer, and our leads of all. */
const played = (lineup: Lineup, parts: readonly number[], precision: number | null = null) => {
  const leads: number[] = []
  let answer: ReturnType<typeof playOn> | null = null
  for (const [index, to] of parts.entries()) {
    // As between page and worker: what was played before comes back as a copy.
    const soFar = structuredClone(answer?.soFar ?? null)
    answer = playOn({ game, level, seed: 7, lineup, from: parts[index - 1] ?? 0, to, soFar, precision }, silent)
    leads.push(...answer.leads)
  }
  return { report: answer!.report, leads }
}

describe('matches played part by part', () => {
  let one: ReturnType<typeof played>
  let other: ReturnType<typeof played>
  beforeAll(async () => {
    await allWords()
    one = played(first, [500, 1000])
    other = played(second, [1000])
  })

  test('say to the last bit what the model says of all at once, of both line-ups', () => {
    expect(one.report).toEqual(simulate({ game, ...first, level, seed: 7, replicates: 1000 }))
    expect(other.report).toEqual(simulate({ game, ...second, level, seed: 7, replicates: 1000 }))
  })

  test('stop where the model stops for the same precision, in the middle of a part, and the sentence says why', () => {
    const until = { replicates: 3000, precision: 0.014 }
    const model = simulate({ game, ...first, level, seed: 7, ...until })
    const { report, leads } = played(first, [500, until.replicates], until.precision)
    expect(report).toEqual(model)
    expect(leads).toHaveLength(report.replicates)
    // √(p (1 − p) / (n + 4)) at 500, 1,000 … matches of even chances: 0.0158 at 1,000, 0.0129 at 1,500.
    expect(report.replicates % 500).toBe(0)
    expect(report.replicates).toBeLessThan(until.replicates)
    expect(precisionSaid(report, until.precision)[0]).toMatch(
      /^No more were needed: .* ± 1\.\d+\u00a0%; 1\.4\u00a0% was asked/,
    )
    expect(precisionSaid(report, 0.005)[0]).toMatch(/not yet to the 0\.5\u00a0%/)
    expect(precisionSaid(report, null)).toEqual([])
  })

  test('differ by as much as the two mean leads do, with less error than two separate means have', () => {
    const { mean: differs, distribution, ahead, level: same, matches } = pairedDifference(one.leads, other.leads)!
    expect(matches).toBe(1000)
    expect(differs.mean).toBeCloseTo(other.report.margin.mean - one.report.margin.mean, 9)
    const apart = Math.hypot(one.report.margin.standardError, other.report.margin.standardError)
    expect(differs.standardError).toBeGreaterThan(0)
    expect(differs.standardError).toBeLessThan(apart)
    const above = distribution.reduce((sum, [value, chance]) => (value > 0 ? sum + chance : sum), 0)
    expect(above).toBeCloseTo(ahead.probability, 9)
    expect(distribution.find(([value]) => value === 0)?.[1] ?? 0).toBeCloseTo(same.probability, 9)
    const mean = distribution.reduce((sum, [value, chance]) => sum + value * chance, 0)
    expect(mean).toBeCloseTo(differs.mean, 9)
  })

  test('differ nowhere where both line-ups are the same, and by what both have played', () => {
    const same = pairedDifference(one.leads, played(first, [500]).leads)!
    expect(same).toMatchObject({ matches: 500, distribution: [[0, 1]], level: { probability: 1 } })
    expect(same.mean.standardError).toBe(0)
    expect(pairedDifference(one.leads, [])).toBeNull()
  })

  test('the parts of the ranking points add up to them', () => {
    const { parts, total } = explainRanking(game, { report: one.report, level, source: '' })
    const sum = parts.reduce((all, { value }) => all + Number(value), 0)
    // Each of the four parts is written to 0.01.
    expect(Math.abs(sum - Number(total!.value))).toBeLessThanOrEqual(0.03)
    expect(parts).toHaveLength(4)
  })
})
