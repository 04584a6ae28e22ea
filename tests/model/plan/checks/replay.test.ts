import { beforeAll, describe, expect, it } from 'vitest'
import { breakwater, optionOf } from '../../../../seed/index.ts'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import { plan } from '../../../../src/model/plan/index.ts'
import type { PlanReport } from '../../../../src/model/plan/types.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { type Played, replays } from './replay.ts'

const count = 40_000

/** Without capacities the printed bands are the whole policy. */
const endless: Game = {
  ...breakwater.game,
  goals: breakwater.game.goals.map((goal) => ({ ...goal, capacity: null })),
}

const steady = (id: string): Option => {
  const option = optionOf(id)
  return { ...option, robot: { ...option.robot, form: { spread: 1 } } }
}

const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const deviation = (values: number[]) => {
  const middle = mean(values)
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)))
}

// Outside truth: the same matches played in continuous time by the policy's own words. Every difference is held
// against 4 standard errors of the replays; the grid's own error (a tenth of a second) is far below one.
// Two robots and both ways to end; the others are replayed in the long form.
const replayed = ['shearwater-best', 'kittiwake-skip', ...(inLongForm ? ['kittiwake-best', 'puffin-best'] : [])]

describe.each(replayed)('the policy of %s, replayed', (id) => {
  const option = steady(id)
  let report: PlanReport
  let matches: Played[]
  beforeAll(() => {
    report = plan(endless, option)
    matches = replays(endless, option, report, count, 7)
  })

  it('earns the expected points', () => {
    const points = matches.map((match) => match.points)
    expect(Math.abs(mean(points) - report.expected.total)).toBeLessThan((4 * deviation(points)) / Math.sqrt(count))
  })

  it('varies as the distribution says', () => {
    const points = matches.map((match) => match.points)
    const middle = mean(points)
    // The standard error of a standard deviation, from the fourth moment.
    const fourth = mean(points.map((value) => (value - middle) ** 4))
    const spread = deviation(points)
    const error = Math.sqrt((fourth - spread ** 4) / count) / (2 * spread)
    expect(Math.abs(spread - report.sd)).toBeLessThan(4 * error)
  })

  it('places the expected pieces on each goal', () => {
    for (const [goal, { pieces }] of Object.entries(report.expected.goals)) {
      const placed = matches.map((match) => match.pieces[goal] ?? 0)
      const error = Math.max(deviation(placed) / Math.sqrt(count), 1e-9)
      expect(Math.abs(mean(placed) - pieces), goal).toBeLessThan(4 * error)
    }
  })

  it('begins each finish as often as expected', () => {
    for (const [finish, { attempts }] of Object.entries(report.expected.finishes)) {
      const begun = matches.filter((match) => match.finish === finish).length / count
      expect(Math.abs(begun - attempts), finish).toBeLessThan(4 * Math.sqrt((attempts * (1 - attempts)) / count) + 1e-9)
    }
  })

  it.each([0.1, 0.25, 0.5, 0.75, 0.9])('has the distribution of points at its quantile %d', (level) => {
    let below = 0
    const at = report.distribution.find(([, chance]) => {
      below += chance
      return below >= level
    })![0]
    const share = matches.filter(({ points }) => points <= at + 1e-6).length / count
    expect(Math.abs(share - below)).toBeLessThan(4 * Math.sqrt((below * (1 - below)) / count))
  })
})
