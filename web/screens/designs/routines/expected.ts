import type { Auto, Game, Option } from '../../../../src/model/documents/types.ts'
import { autonomousOf } from '../../../../src/model/plan/autonomous.ts'

export interface StepPart {
  /** Expected points of the step. */
  points: number
  /** Share of matches in which it is tried. */
  tried: number
  /** Expected pieces that score, room or not. */
  pieces: number
  /** Points of one piece placed then. */
  worth: number
  /** Whether the goal's room takes something from it. */
  limited: boolean
}

export interface RoutinePoints {
  total: number
  steps: StepPart[]
  /** Expected points of moving off the start. */
  leaves: number
  /** Share of matches in which it brings no point, and in which it brings all that it can. */
  none: number
  all: number
}

/**
 * What a routine is expected to bring, and from what: the model's exact autonomous with ever more of its steps, so that
 * the parts add up to the whole.
 */
export function routinePoints(game: Game, option: Option, auto: Auto): RoutinePoints {
  const run = (steps: Auto['steps'], leaves = 0, rules = game) =>
    autonomousOf(
      rules,
      { ...option, robot: { ...option.robot, autos: [{ ...auto, steps, leaves }] }, auto: auto.id },
      [],
    )
  const upTo = auto.steps.map((_, index) => run(auto.steps.slice(0, index + 1)).expected)
  // One piece that surely scores in a goal with room: what it pays.
  const worthOf = (step: Auto['steps'][number]) =>
    run([{ ...step, count: 1, success: 1, needsPrevious: false }], 0, unlimited(game)).expected
  /** Chance that every piece of the step before scored, and that it was tried at all. */
  let clean = 1
  const steps = auto.steps.map((step, index): StepPart => {
    const tried = step.needsPrevious ? clean : 1
    clean = tried * step.success ** step.count
    const points = upTo[index]! - (upTo[index - 1] ?? 0)
    const pieces = tried * step.count * step.success
    const worth = worthOf(step)
    return { points, tried, pieces, worth, limited: Math.abs(points - pieces * worth) > 1e-6 }
  })
  const whole = run(auto.steps, auto.leaves)
  const most = Math.max(...whole.outcomes.map(({ points }) => points))
  const share = (points: number) =>
    whole.outcomes.filter((one) => Math.abs(one.points - points) < 1e-9).reduce((sum, one) => sum + one.probability, 0)
  return {
    total: whole.expected,
    steps,
    leaves: whole.expected - (upTo.at(-1) ?? 0),
    none: share(0),
    all: most > 0 ? share(most) : 0,
  }
}

const unlimited = (game: Game): Game => ({
  ...game,
  goals: game.goals.map((goal) => ({ ...goal, capacity: null })),
})
