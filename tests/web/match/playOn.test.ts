import { beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { explainRanking } from '../../../web/screens/match/explain.ts'
import { pairedDifference } from '../../../web/screens/match/paired.ts'
import { allWords } from '../../../web/words/catalogue.ts'
import { playOn } from '../../../web/worker/match.ts'
import type { Lineup } from '../../../web/worker/protocol.ts'

const [shearwater, kittiwake, puffin] = ['shearwater-best', 'kittiwake-best', 'puffin-best'].map(optionOf)
const first: Lineup = { ours: [shearwater!, puffin!, puffin!], theirs: [puffin!, puffin!, shearwater!] }
const second: Lineup = { ours: [kittiwake!, puffin!, puffin!], theirs: first.theirs }
const level = 'local'
const silent = () => {}

/** A line-up's matches in parts: the last answer, and our leads of all. */
const played = (lineup: Lineup, parts: readonly number[]) => {
  const leads: number[] = []
  let answer: ReturnType<typeof playOn> | null = null
  for (const [index, to] of parts.entries()) {
    // As between page and worker: what was played before comes back as a copy.
    const soFar = structuredClone(answer?.soFar ?? null)
    answer = playOn({ game, level, seed: 7, lineup, from: parts[index - 1] ?? 0, to, soFar }, silent)
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
