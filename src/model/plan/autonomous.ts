import type { Auto, Game, Goal, Option } from '../documents/types.ts'
import { binomial } from './binomial.ts'

/** One way in which autonomous can end: what it earned and what room is left. */
export interface AutoOutcome {
  readonly probability: number
  readonly points: number
  /** Room left per goal with a capacity, in the order asked for. */
  readonly room: readonly number[]
}

export interface Autonomous {
  readonly outcomes: readonly AutoOutcome[]
  /** Expected points, moving off the start included. */
  readonly expected: number
}

/**
 * The exact distribution of autonomous: steps in their order, each piece of a step a success or not, limited by room.
 * A step that needs the one before is tried only if every piece of that one succeeded, whether or not there was room.
 * A piece on a hold goal pays holdSeconds from the step's time on, at each period's rate; the pause pays nothing.
 */
export function autonomousOf(game: Game, option: Option, goals: readonly Goal[]): Autonomous {
  const limited = goals.filter((goal) => goal.capacity !== null)
  const full = limited.map((goal) => goal.capacity as number)
  const routine = option.robot.autos.find((auto) => auto.id === option.auto)
  if (option.auto === null || !routine) return { outcomes: [{ probability: 1, points: 0, room: full }], expected: 0 }
  const leave = game.leave?.points ?? 0
  const steps = played(game, option, routine, limited, full)
  const outcomes =
    leave === 0 || routine.leaves === 0
      ? steps
      : steps.flatMap((outcome) => [
          { ...outcome, probability: outcome.probability * (1 - routine.leaves) },
          { ...outcome, probability: outcome.probability * routine.leaves, points: outcome.points + leave },
        ])
  const kept = merged(outcomes)
  return { outcomes: kept, expected: kept.reduce((sum, outcome) => sum + outcome.probability * outcome.points, 0) }
}

interface Running extends AutoOutcome {
  readonly clean: boolean
}

function played(
  game: Game,
  option: Option,
  routine: Auto,
  limited: readonly Goal[],
  full: readonly number[],
): AutoOutcome[] {
  // Goals that the role leaves out in teleop can still be scored on here; their room is followed in the same way.
  const others = game.goals.filter((goal) => goal.capacity !== null && !limited.some((other) => other.id === goal.id))
  const followed = [...limited, ...others]
  let running: Running[] = [
    { probability: 1, points: 0, room: [...full, ...others.map((goal) => goal.capacity as number)], clean: true },
  ]
  for (const step of routine.steps) {
    const goal = game.goals.find((other) => other.id === step.goal)
    if (!goal) continue
    const each = pieceValue(game, option, goal, step.at)
    const dimension = followed.findIndex((other) => other.id === goal.id)
    const successes = binomial(step.count, step.success)
    running = mergedRunning(
      running.flatMap((before): Running[] => {
        if (step.needsPrevious && !before.clean) return [before]
        return [...successes].map((probability, count) => {
          const placed = dimension < 0 ? count : Math.min(count, before.room[dimension] as number)
          return {
            probability: before.probability * probability,
            points: before.points + placed * each,
            room: before.room.map((room, d) => (d === dimension ? room - placed : room)),
            clean: count === step.count,
          }
        })
      }),
    )
  }
  return running.map(({ probability, points, room }) => ({ probability, points, room: room.slice(0, limited.length) }))
}

/** Points of one piece placed in autonomous at `at` seconds since the match's start. */
function pieceValue(game: Game, option: Option, goal: Goal, at: number): number {
  if (goal.award.kind === 'each') return goal.award.auto
  const seconds = option.holdSeconds[goal.id] ?? 0
  const inAuto = Math.min(seconds, Math.max(0, game.clock.auto - at))
  const inTeleop = Math.min(seconds - inAuto, game.clock.teleop)
  return goal.award.autoPerSecond * inAuto + goal.award.teleopPerSecond * inTeleop
}

function mergedRunning(outcomes: readonly Running[]): Running[] {
  return gathered(outcomes, (o) => `${o.points.toFixed(9)}|${o.room.join()}|${o.clean}`)
}

function merged(outcomes: readonly AutoOutcome[]): AutoOutcome[] {
  return gathered(outcomes, (o) => `${o.points.toFixed(9)}|${o.room.join()}`)
}

function gathered<Outcome extends AutoOutcome>(
  outcomes: readonly Outcome[],
  key: (outcome: Outcome) => string,
): Outcome[] {
  const byKey = new Map<string, Outcome>()
  for (const outcome of outcomes) {
    if (outcome.probability === 0) continue
    const found = byKey.get(key(outcome))
    byKey.set(key(outcome), found ? { ...found, probability: found.probability + outcome.probability } : outcome)
  }
  return [...byKey.values()]
}
