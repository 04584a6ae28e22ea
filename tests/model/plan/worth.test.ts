import { expect, it } from 'vitest'
import { standard } from '../../../seed/standard.ts'
import type { Option, Stage } from '../../../src/model/documents/types.ts'
import type { ShiftedDuration } from '../../../src/model/duration/index.ts'
import { distributionOf } from '../../../src/model/duration/index.ts'
import { Planner } from '../../../src/model/plan/index.ts'
import { joinedWorth, PlanParts } from '../../../src/model/plan/shares.ts'
import type { Worth, WorthLeg } from '../../../src/model/plan/types.ts'
import { game, optionNamed } from '../reference.ts'

/** The option with one stage's every draw moved, written into its documents: what the worth must agree with. */
function moved(option: Option, leg: WorthLeg, id: string, seconds: number): Option {
  const copy = structuredClone(option)
  const { collect, score, finish } = copy.robot
  const trip =
    leg.kind === 'collect'
      ? collect[leg.source]
      : leg.kind === 'score'
        ? score[leg.goal]?.[leg.entry]
        : finish[leg.finish]
  const stage = (trip as { stages: Stage[] }).stages.find((other) => other.id === id) as Stage
  const shifted: ShiftedDuration = { kind: 'shifted', base: stage.duration, by: seconds }
  stage.duration = shifted as unknown as Stage['duration']
  return copy
}

type Planned = Parameters<PlanParts['worth']>[0]

/** What two plans say of each stage, whose documents were changed by as much as the model moves the stage. */
function expectAsTwoPlansSay({ game, option }: Planned, worth: readonly Worth[]): void {
  for (const { leg, stage, pointsPerSecond } of worth) {
    const plain = moved(option, leg, stage, 0)
    const trip =
      leg.kind === 'collect'
        ? plain.robot.collect[leg.source]
        : leg.kind === 'score'
          ? plain.robot.score[leg.goal]?.[leg.entry]
          : plain.robot.finish[leg.finish]
    const found = (trip as { stages: Stage[] }).stages.find((other) => other.id === stage) as Stage
    const delta = Math.min(0.5, distributionOf(found.duration).mean / 2)
    const value = (seconds: number) => new Planner(game).value(moved(option, leg, stage, seconds))
    const two = (value(-delta) - value(delta)) / (2 * delta)
    // To two places, or four digits where a second is worth hundreds of points.
    expect(Math.abs(pointsPerSecond - two), `${JSON.stringify(leg)} ${stage}: ${pointsPerSecond}, ${two}`).toBeLessThan(
      Math.max(0.005, two * 1e-4),
    )
  }
}

it.each(['gannet-best', 'petrel-pier'])(
  'worth agrees with two plans whose documents were changed: %s',
  (id) => {
    const option = optionNamed(id)
    const worth = new Planner(game).report(option, { with: ['worth'] }).worth ?? []
    expect(worth.length).toBeGreaterThan(4)
    expectAsTwoPlansSay({ game, option }, worth)
  },
  120_000,
)

// A load of 8 nearly fills a goal: a moved plan goes where the plan as it is never was.
it('worth agrees with two plans also where loads are large', { timeout: 60_000 }, () => {
  const { robot } = standard.option
  const short = { ...standard.game, clock: { ...standard.game.clock, teleop: 40 } }
  const planned = { game: short, option: { ...standard.option, robot: { ...robot, carries: { buoy: 8 } } } }
  const parts = new PlanParts()
  const ofLightship = ({ leg }: Worth) => leg.kind === 'score' && leg.goal === 'lightship'
  let found: Worth[] = []
  for (let at = 0; found.length === 0; at++)
    found = joinedWorth([parts.worth(planned, { at, of: 9 })]).filter(ofLightship)
  expect(found.map(({ stage }) => stage)).toEqual(['raise', 'reach', 'set-down'])
  expectAsTwoPlansSay(planned, found)
})

it('a trip that is one guess has its worth too, as two plans with that guess moved by half a second say', () => {
  const guessed = (by: number): Option => {
    const option = structuredClone(optionNamed('petrel-pier'))
    for (const [goal, entries] of Object.entries(option.robot.score))
      option.robot.score[goal] = entries.map(({ success, spots }) => ({
        whole: { kind: 'range', low: 4 + by, likely: 6 + by, high: 9 + by },
        success,
        spots,
      }))
    return option
  }
  const worth = new Planner(game).report(guessed(0), { with: ['worth'] }).worth ?? []
  const whole = worth.filter(({ stage }) => stage === 'whole')
  expect(whole.map(({ leg }) => leg.kind)).toContain('score')
  const value = (by: number) => new Planner(game).value(guessed(by))
  const all = whole.reduce((sum, { pointsPerSecond }) => sum + pointsPerSecond, 0)
  // Only one of the goals is played, so that moving the guesses of all moves that of one.
  expect(whole.filter(({ pointsPerSecond }) => pointsPerSecond > 0.01)).toHaveLength(1)
  expect(all).toBeGreaterThan(0.3)
  expect(all).toBeCloseTo(value(-0.5) - value(0.5), 2)
}, 60_000)

it('worth in shares, in whatever order, is the same to the last bit, and so is the rest of the report', () => {
  const option = optionNamed('petrel-pier')
  const whole = new Planner(game).report(option, { with: ['call', 'worth'] })
  const [one, other] = [new PlanParts(), new PlanParts()]
  const planned = { game, option }
  const shares = [2, 0, 1].map((at) => (at === 1 ? other : one).worth(planned, { at, of: 3 }))
  expect(shares.filter((share) => share.length > 0).length).toBeGreaterThan(1)
  expect({ ...other.report(planned, ['call', 'worth']), worth: joinedWorth(shares) }).toEqual(whole)
})
