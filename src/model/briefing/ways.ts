import type { Habit, HabitDraw } from '../documents/habit.ts'
import type { Game, Option, Role } from '../documents/types.ts'
import { habitPoints } from '../match/habitPoints.ts'
import type { BriefingRequest, Call, Version } from './types.ts'

/** Line-ups that are played. */
export const mostPlayed = 16

/** A goal that a robot went to on fewer of its trips is none that a coach would send it to. */
const leastShare = 0.15

/**
 * Ways in which one of ours may play: as it was seen, then each goal alone that it was often seen at. Its trips take as long
 * to whichever goal, since records tell the times of trips together.
 */
export function waysOf({ robot, role }: Option): Role[] {
  const shares = Object.entries(robot.habit?.goals ?? {}).filter(([goal]) => role.goals.includes(goal))
  const sum = shares.reduce((total, [, share]) => total + share, 0)
  const often = shares.filter(([, share]) => share >= leastShare * sum).map(([goal]) => goal)
  return [role, ...(often.length > 1 ? often.map((goal) => ({ ...role, goals: [goal] })) : [])]
}

/** Goals of a way, most of its trips first. */
export const goalsOf = ({ robot }: Option, { goals }: Role): string[] =>
  [...goals].sort((a, b) => (robot.habit?.goals[b] ?? 0) - (robot.habit?.goals[a] ?? 0))

export const asSeen: Version = { ways: [0, 0, 0], calls: [null, null, null] }

/** Line-ups worth playing, as the closed form has them; as they were seen is always among them. */
export function candidatesOf(request: Pick<BriefingRequest, 'game' | 'ours'>): { all: number; chosen: Version[] } {
  const { game, ours } = request
  const ways = ours.map(waysOf)
  const points = ours.map((option, i) => ways[i]!.map((role) => habitPoints(game, { ...someDraws(option), role })))
  const every = ways[0]!.flatMap((_, a) =>
    ways[1]!.flatMap((_, b) => ways[2]!.map((_, c): Version['ways'] => [a, b, c])),
  )
  const worth = (choice: Version['ways']) => {
    const own = choice.map((way, i) => points[i]![way])
    const total = own.reduce((sum, each) => sum + (each?.total ?? 0), 0)
    return total - surplus(game, own)
  }
  const ranked = every
    .filter((choice) => choice.some((way) => way !== 0))
    .map((choice) => ({ choice, worth: worth(choice) }))
    .sort((a, b) => b.worth - a.worth)
    .slice(0, mostPlayed - 1)
  return { all: every.length, chosen: [asSeen, ...ranked.map(({ choice }) => ({ ...asSeen, ways: choice }))] }
}

/** A few of its draws, which order line-ups as well as all of them. */
export function someDraws(option: Option): Option {
  const { robot } = option
  if (!robot.habit?.draws) return option
  return { ...option, robot: { ...robot, habit: { ...robot.habit, draws: robot.habit.draws.slice(0, 20) } } }
}

/** Points of pieces that find no room on a goal which all three count on. */
function surplus(game: Game, own: readonly (ReturnType<typeof habitPoints> | undefined)[]): number {
  return game.goals.reduce((sum, { id, capacity }) => {
    if (capacity === null) return sum
    const pieces = own.reduce((total, each) => total + (each?.goals[id]?.pieces ?? 0), 0)
    const points = own.reduce((total, each) => total + (each?.goals[id]?.points ?? 0), 0)
    return pieces > capacity ? sum + (points * (pieces - capacity)) / pieces : sum
  }, 0)
}

/** Factors on times that the contract of a draw allows. */
const longest = 20

/** The six options of a version, ours first. */
export function optionsOf(request: BriefingRequest, version: Version): Option[] {
  const ours = request.ours.map((option, i) => {
    if (version.absent === i) return absent(option)
    const role = waysOf(option)[version.ways[i] as number] as Role
    const own = called({ ...option, role }, version.calls[i] ?? null)
    return version.marks === i ? marking(own) : own
  })
  // Whoever does not come stands in nobody's way.
  const unmarked = version.marks !== undefined && version.absent === version.marks
  const theirs = request.theirs.map((option, j) =>
    version.slowed === j && !unmarked ? slowed(option, request.slowing) : option,
  )
  return [...ours, ...theirs]
}

function called(option: Option, call: Call): Option {
  if (call === null) return option
  return { ...option, finish: call === 'never' ? { mode: 'skip' } : { mode: 'always', at: call } }
}

const withDraws = ({ robot }: Option, change: (draw: HabitDraw) => HabitDraw): Partial<Habit> =>
  robot.habit ? { draws: (robot.habit.draws ?? [{}]).map(change) } : {}

function slowed(option: Option, slowing: number): Option {
  const { robot } = option
  if (!robot.habit) return option
  const draws = withDraws(option, (draw) => ({ ...draw, time: Math.min(longest, (draw.time ?? 1) * (1 + slowing)) }))
  return { ...option, robot: { ...robot, habit: { ...robot.habit, ...draws } } }
}

function absent(option: Option): Option {
  const { robot } = option
  const reliability = { ...robot.reliability, absent: 1 }
  if (!robot.habit) return { ...option, robot: { ...robot, reliability } }
  const draws = withDraws(option, (draw) => ({ ...draw, absent: 1 }))
  return { ...option, robot: { ...robot, reliability, habit: { ...robot.habit, ...draws } } }
}

/** It plays its autonomous and goes for its finish, and otherwise only stands in the way: no goal of its own. */
const marking = (option: Option): Option => ({ ...option, role: { ...option.role, goals: [] } })
