import { expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import { standingsField } from '../../../seed/standings.ts'
import { groundOf } from '../../../src/model/match/ground.ts'
import { LineupPlayer } from '../../../src/model/match/lineup/index.ts'
import { simulate } from '../../../src/model/match/run.ts'
import {
  addStated,
  noSums,
  StatedPlayer,
  type StatedRequest,
  statedReport,
} from '../../../src/model/match/stated/index.ts'
import { Planner } from '../../../src/model/plan/planner.ts'

const { game, standings } = breakwater
const partners = standingsField.partners.map(optionOf)
const opponents = standingsField.opponents.map(optionOf)
const [hook, practice] = ['shearwater-best', 'kittiwake-best'].map(optionOf) as [
  ReturnType<typeof optionOf>,
  ReturnType<typeof optionOf>,
]

const request: StatedRequest = {
  game,
  level: standingsField.level,
  // The same robot once more, which must differ in nothing.
  options: [hook, practice, { ...hook, id: 'again' }],
  partners,
  opponents,
  replicates: 3000,
  seed: 1,
}
const ground = groundOf(game)
const player = new StatedPlayer()
const sums = noSums(request, ground)
for (const block of [...player.play(request, 0, 2), ...player.play(request, 2, 6)]) addStated(sums, block)
const report = statedReport(request, ground, sums)

test('each option has the matches that it plays alone, and a difference is the one that single matches give', () => {
  const { ours, ...rest } = { ...request, ours: [practice, ...partners], theirs: opponents }
  const alone = simulate({ ...rest, ours })
  const found = report.options[1]!
  expect(found.won).toEqual(alone.win)
  expect(found.win.mean).toBeCloseTo(alone.win.probability + alone.tie.probability / 2, 12)
  expect(found.rankingPoints.mean).toBe(alone.rankingPoints.ours.mean)
  expect(found.score.standardError).toBe(alone.score.ours.standardError)
  expect(found.bonuses.berthed).toEqual(alone.bonuses.berthed!.ours)

  // Match by match, by the player of line-ups: another way to the same numbers.
  for (const [objective, measure] of [
    ['win', 'win'],
    ['rankingPoints', 'rankingPoints'],
  ] as const) {
    const values = [hook, practice].map((option) =>
      new LineupPlayer({
        game,
        level: standingsField.level,
        ours: [option, ...partners],
        theirs: [opponents],
        roles: [[option.role], [partners[0]!.role], [partners[1]!.role]],
        seed: 1,
        objective,
      }).play([0, 0, 0], 0, 3000),
    )
    const differences = Array.from(values[0]!, (value, match) => value - values[1]![match]!)
    const mean = differences.reduce((sum, value) => sum + value, 0) / 3000
    const variance = differences.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 2999
    const told = report.differences['shearwater-best']!['kittiwake-best']![measure]
    expect(told.mean).toBeCloseTo(mean, 10)
    expect(told.standardError).toBeCloseTo(Math.sqrt(variance / 3000), 10)
    expect(report.differences['kittiwake-best']!['shearwater-best']![measure].mean).toBeCloseTo(-mean, 10)
  }
})

test('a robot differs in nothing from itself, and shared luck tells two options apart better than luck apart would', () => {
  const same = report.differences.again!['shearwater-best']!
  expect(Object.values(same)).toEqual(Array(3).fill({ mean: 0, standardError: 0 }))
  const [one, other] = report.options
  const apart = Math.hypot(one!.rankingPoints.standardError, other!.rankingPoints.standardError)
  const paired = report.differences[one!.id]![other!.id]!.rankingPoints.standardError
  expect(paired).toBeLessThan(0.6 * apart)
})

test('in the demo’s question points and wins say one thing and ranking points the other, each beyond four standard errors', () => {
  expect(standings.options.map(({ option }) => option.id)).toEqual([hook.id, practice.id])
  const planner = new Planner(game, 0.1)
  // Exact, so without an error of its own: the headline by points shows tenths.
  expect(planner.value(practice) - planner.value(hook)).toBeGreaterThan(0.5)
  const { win, score, rankingPoints } = report.differences[hook.id]![practice.id]!
  expect(win.mean).toBeLessThan(-4 * win.standardError)
  expect(score.mean).toBeLessThan(-4 * score.standardError + 1e-9)
  expect(rankingPoints.mean).toBeGreaterThan(4 * rankingPoints.standardError)
  // Because of one bonus, which the robot without the hook never brings there.
  const [own, other] = report.options.map(({ bonuses }) => bonuses.berthed!.probability)
  expect(own).toBeGreaterThan(0.3)
  expect(other).toBe(0)
})
