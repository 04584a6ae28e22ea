import type { TimedLeg } from '../../../../src/model/documents/timing.ts'
import type { Duration, Game, Robot, Trip } from '../../../../src/model/documents/types.ts'
import { mean } from '../../../../src/model/duration/index.ts'

/** From where to where a drive goes: ids of starts and spots. */
export interface Ends {
  from: string
  to: string
}

const ids = (places: readonly { spots: readonly { id: string }[] }[]): string[] =>
  places.flatMap(({ spots }) => spots.map(({ id }) => id))

/** Where the drive of a leg may end: the spots of its place from which the robot plays it. */
function endings(game: Game, robot: Robot, leg: TimedLeg): string[] {
  if (leg.kind === 'collect') return ids(game.sources.filter(({ id }) => id === leg.source))
  if (leg.kind === 'finish') return ids(game.finishes.filter(({ id }) => id === leg.finish))
  const spots = robot.score[leg.goal]?.[leg.entry]?.spots ?? 'any'
  return ids(game.goals.filter(({ id }) => id === leg.goal)).filter((id) => spots === 'any' || spots.includes(id))
}

/** Where it may begin: any start or spot; first where robots usually come from on such a leg. */
function beginnings(game: Game, robot: Robot, leg: TimedLeg): string[] {
  const sources = ids(game.sources.filter(({ id }) => robot.collect[id] !== undefined))
  const goals = ids(game.goals.filter(({ id }) => (robot.score[id]?.length ?? 0) > 0))
  const usual = leg.kind === 'score' ? sources : goals
  const all = [...game.starts.map(({ id }) => id), ...ids([...game.sources, ...game.goals, ...game.finishes])]
  return [...new Set([...usual, ...all])]
}

/** What can be chosen for a drive, each list with what is taken at first in front; null for a leg that is given whole. */
export function endsOf(game: Game, robot: Robot, leg: TimedLeg, trip: Trip): { from: string[]; to: string[] } | null {
  if ('whole' in trip) return null
  const to = endings(game, robot, leg)
  const from = beginnings(game, robot, leg)
  return to.length > 0 && from.length > 1 ? { from, to } : null
}

/** Measured drives against the computed one (s). */
export interface ComparedDrive {
  measured: number
  /** The ideal line from rest to rest. */
  ideal: number
  /** The same with the design's pace, which the plan counts with. */
  expected: number
  /** Measured less expected. */
  difference: number
  /** What measured is of ideal: the pace that these drives had. */
  factor: number
}

/** `seconds`: measured drives, at least one; `ideal`: above 0. */
export function comparedDrive(seconds: readonly number[], ideal: number, pace: Duration): ComparedDrive {
  const measured = seconds.reduce((sum, value) => sum + value, 0) / seconds.length
  const expected = ideal * mean(pace)
  return { measured, ideal, expected, difference: measured - expected, factor: measured / ideal }
}
