import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../seed/index.ts'
import { travel } from '../../src/model/field/index.ts'
import { legReport } from '../../src/model/leg/index.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { stripLayout } from '../../web/charts/stripLayout.ts'
import {
  explainBesidePoints,
  explainBesideTime,
  explainCritical,
  explainFloat,
  explainWaiting,
} from '../../web/screens/designs/explain.ts'
import { explainRoute } from '../../web/screens/games/field/explainRoute.ts'
import { spotsOf, startsOf } from '../../web/screens/games/field/things.ts'
import { explainRegret } from '../../web/screens/tradeoffs/explain.ts'
import type { Explanation } from '../../web/words/explain.ts'
import { explainSpread } from '../../web/words/explainSpread.ts'
import { collectLeg, scoreLeg } from './strip.fixture.ts'

const { game, decision } = breakwater
const [hook, practice] = [optionOf('shearwater-best'), optionOf('kittiwake-best')]
const source = 'A design, revision 1.'
const figure = (text: string) => Number(text.replace('\u2212', '-').match(/-?\d+(\.\d+)?/)?.[0])
const values = ({ parts }: Explanation) => parts.map(({ value }) => figure(value))
/** Each number is shown to a tenth. */
const rounded = 0.101

describe('a strip’s numbers', () => {
  const layout = stripLayout([scoreLeg])
  const bar = (stage: string) => layout.bars.find((each) => each.stage === stage)!

  test('float is the latest end less the earliest: 3.1 s for the lift, by hand', () => {
    const told = explainFloat(bar('lift'), source)
    expect(values(told)).toEqual([4.6, 1.5])
    expect(figure(told.total!.value)).toBe(3.1)
    expect(told.source).toBe(source)
  })
  test('on the longest path: every stage of the leg, as the report counted it', () => {
    const told = explainCritical(bar('aim'), stripLayout([collectLeg, scoreLeg]).bars, source)
    expect(told.result).toContain('10')
    expect(told.parts.map(({ label }) => label).sort()).toEqual(['Aim', 'Drive', 'Fire', 'Lift', 'Spin up'])
    expect(values(told).reduce((sum, share) => sum + share, 0)).toBe(10 + 10 + 90 + 10 + 90)
  })
  test('a leg’s waiting is its mean less its bars: 5.6 s less 5.3 s', () => {
    const told = explainWaiting(layout.sections[0]!, source)
    expect(values(told)).toEqual([5.6, 5.3])
    expect(figure(told.total!.value)).toBe(0.3)
  })
  test('beside another: the legs’ differences make the whole, and the points’ difference is that of both', () => {
    const [mine, other] = [stripLayout([collectLeg, scoreLeg]), stripLayout([collectLeg, collectLeg])]
    const told = explainBesideTime(
      { name: 'A', sections: mine.sections },
      { name: 'B', sections: other.sections },
      source,
    )
    expect(told.parts[0]!.value).toContain('same')
    expect(figure(told.parts[1]!.value)).toBe(figure(told.total!.value))
    expect(told.total!.value).toContain('less')
    const points = explainBesidePoints({ option: hook, points: 57.36 }, { option: practice, points: 59.44 }, source)
    expect(values(points)).toEqual([59.4, 57.4])
    expect(figure(points.total!.value)).toBe(2.1)
  })
})

test('the waiting of the demo’s leg is not less than nothing: late stages only add', () => {
  const request = { kind: 'collect', source: game.sources[0]!.id, spot: game.sources[0]!.spots[0]!.id } as const
  const report = legReport(game, hook.robot, { ...request, from: game.goals[0]!.spots[0]!.id, load: 1 })
  const [section] = stripLayout([{ id: 'a', name: 'A', report, stageNames: {}, worth: {} }]).sections
  expect(section!.waiting).toBeGreaterThan(-0.005)
})

test('match to match: tenths around the middle, from the plan’s own distribution', () => {
  const report = new Planner(game, 0.25).report(hook)
  const [low, middle, high] = values(explainSpread(hook, { ...report, mean: report.expected.total }, source))
  expect(low).toBeLessThan(middle!)
  expect(middle).toBeLessThan(high!)
  const below = (points: number) =>
    report.distribution.reduce((sum, [value, chance]) => (value < points - 0.05 ? sum + chance : sum), 0)
  expect(below(low!)).toBeLessThanOrEqual(0.1)
  expect(below(high! + 0.1)).toBeGreaterThanOrEqual(0.9)
})

test('a route: at top speed and the rest make its time', () => {
  const things = [...startsOf(game), ...spotsOf(game)]
  const [from, to] = [things[0]!, things.at(-1)!]
  const route = travel(game, hook.robot, from.id, to.id)
  const told = explainRoute(route, { game, robot: hook.robot, from, to, system: 'metric', source })
  const [cruise, rest] = values(told)
  expect(cruise).toBeCloseTo(route.length / hook.robot.drive.topSpeed, 1)
  expect(rest).toBeGreaterThan(0)
  expect(Math.abs(cruise! + rest! - figure(told.total!.value))).toBeLessThan(rounded)
})

test('regret: what the record’s belief found for each option', () => {
  const belief = decision.snapshot.result.belief!
  const documents = { game: decision.snapshot.game, options: decision.snapshot.options }
  const told = explainRegret(belief, hook.id, decision.snapshot.inputs, { documents, source })
  expect(values(told)).toEqual(documents.options.map(({ id }) => Number(belief.regret[id]!.toFixed(1))))
  expect(told.inputs.length).toBe(decision.snapshot.inputs.length)
})
