import { beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { explainRanking } from '../../../web/screens/match/explain.ts'
import { allWords } from '../../../web/words/catalogue.ts'
import { playOn } from '../../../web/worker/match.ts'
import type { Lineup, MatchesSoFar } from '../../../web/worker/protocol.ts'

const [shearwater, kittiwake, puffin] = ['shearwater-best', 'kittiwake-best', 'puffin-best'].map(optionOf)
const first: Lineup = { ours: [shearwater!, puffin!, puffin!], theirs: [puffin!, puffin!, shearwater!] }
const second: Lineup = { ours: [kittiwake!, puffin!, puffin!], theirs: first.theirs }
const level = 'local'
const silent = () => {}

const played = (of: { second: Lineup | null; parts: readonly number[] }) => {
  let soFar: MatchesSoFar | null = null
  let from = 0
  let answer: ReturnType<typeof playOn> | null = null
  for (const to of of.parts) {
    // As between page and worker: what was played before comes back as a copy.
    const before: MatchesSoFar | null = structuredClone(soFar)
    answer = playOn({ game, level, seed: 7, first, second: of.second, from, to, soFar: before }, silent)
    soFar = answer.soFar
    from = to
  }
  return answer!
}

describe('matches played part by part', () => {
  let pair: ReturnType<typeof playOn>
  beforeAll(async () => {
    await allWords()
    pair = played({ second, parts: [500, 1000] })
  })

  test('say to the last bit what the model says of all at once, of both line-ups', () => {
    const alone = simulate({ game, ...first, level, seed: 7, replicates: 1000 })
    expect(pair.report).toEqual(alone)
    expect(pair.pair!.report).toEqual(simulate({ game, ...second, level, seed: 7, replicates: 1000 }))
  })

  test('differ by as much as the two mean leads do, with less error than two separate means have', () => {
    const { difference, report } = pair.pair!
    expect(difference.mean.mean).toBeCloseTo(report.margin.mean - pair.report.margin.mean, 9)
    const apart = Math.hypot(report.margin.standardError, pair.report.margin.standardError)
    expect(difference.mean.standardError).toBeGreaterThan(0)
    expect(difference.mean.standardError).toBeLessThan(apart)
    const { distribution, ahead, level: same } = difference
    const above = distribution.reduce((sum, [value, chance]) => (value > 0 ? sum + chance : sum), 0)
    expect(above).toBeCloseTo(ahead.probability, 9)
    expect(distribution.find(([value]) => value === 0)?.[1] ?? 0).toBeCloseTo(same.probability, 9)
    const mean = distribution.reduce((sum, [value, chance]) => sum + value * chance, 0)
    expect(mean).toBeCloseTo(difference.mean.mean, 9)
  })

  test('differ nowhere where both line-ups are the same', () => {
    const { pair: same } = played({ second: first, parts: [500] })
    expect(same!.difference.distribution).toEqual([[0, 1]])
    expect(same!.difference.level.probability).toBe(1)
    expect(same!.difference.mean.standardError).toBe(0)
  })

  test('the parts of the ranking points add up to them', () => {
    const { parts, total } = explainRanking(game, { report: pair.report, level, source: '' })
    const sum = parts.reduce((all, { value }) => all + Number(value), 0)
    // Each of the four parts is written to 0.01.
    expect(Math.abs(sum - Number(total!.value))).toBeLessThanOrEqual(0.03)
    expect(parts).toHaveLength(4)
  })
})
