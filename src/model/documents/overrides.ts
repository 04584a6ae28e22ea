import type { OverriddenLeg, Override } from './records.ts'
import type { Game, Option, Robot, Trip } from './types.ts'

/** What an option brings on one goal in teleop, on average. */
export interface GoalPoints {
  pieces: number
  points: number
}

type LegOverride = Extract<Override, { kind: 'leg' }>

/** What an override is about, as one text: no two of a comparison have the same. */
export function overriddenThing(override: Override): string {
  if (override.kind === 'pieces') return `pieces ${override.option} ${override.goal}`
  if ('option' in override) return `${override.kind} ${override.option}`
  if (override.kind === 'leg') return `leg ${override.robot} ${legPointer(override.leg)}`
  if (override.kind === 'success') return `success ${override.robot} ${override.finish}`
  // A time between two spots is the same both ways.
  return `travel ${override.robot} ${[override.from, override.to].sort().join(' ')}`
}

/** Where a robot keeps a leg, as a JSON Pointer (RFC 6901). */
export function legPointer(leg: OverriddenLeg): string {
  const escaped = (id: string) => id.replaceAll('~', '~0').replaceAll('/', '~1')
  if (leg.kind === 'collect') return `/collect/${escaped(leg.source)}`
  if (leg.kind === 'score') return `/score/${escaped(leg.goal)}/${leg.entry}`
  return `/finish/${escaped(leg.finish)}`
}

/** The leg of a robot; undefined where it has none there. */
export function legOf(robot: Robot, leg: OverriddenLeg): Trip | undefined {
  if (leg.kind === 'collect') return robot.collect[leg.source]
  if (leg.kind === 'score') return robot.score[leg.goal]?.[leg.entry]
  return robot.finish[leg.finish]
}

/** The trip with its own time for the whole leg; chances, spots and retries stay. */
function whole<T extends Trip>(trip: T, { whole: time }: LegOverride): T {
  const { stages: _, ...rest } = trip as T & { stages?: unknown }
  return { ...rest, whole: time } as unknown as T
}

function withLeg(robot: Robot, override: LegOverride): Robot {
  const { leg } = override
  if (override.robot !== robot.id || !legOf(robot, leg)) return robot
  if (leg.kind === 'collect') {
    return { ...robot, collect: { ...robot.collect, [leg.source]: whole(robot.collect[leg.source]!, override) } }
  }
  if (leg.kind === 'finish') {
    return { ...robot, finish: { ...robot.finish, [leg.finish]: whole(robot.finish[leg.finish]!, override) } }
  }
  const entries = robot.score[leg.goal]!.map((entry, index) => (index === leg.entry ? whole(entry, override) : entry))
  return { ...robot, score: { ...robot.score, [leg.goal]: entries } }
}

/**
 * A robot with its own numbers: overridden legs take their own whole time, wherever they start, drives between two spots theirs,
 * and finishes hold with their own chance. What it has not is left out.
 */
export const withOverriddenRobot = (robot: Robot, overrides: readonly Override[]): Robot =>
  overrides.reduce((changed, override) => {
    if (!('robot' in override) || override.robot !== robot.id) return changed
    if (override.kind === 'leg') return withLeg(changed, override)
    return override.kind === 'travel' ? withTime(changed, override) : withChance(changed, override)
  }, robot)

function withTime(robot: Robot, { from, to, seconds }: Extract<Override, { kind: 'travel' }>): Robot {
  const { drive } = robot
  const ends = [from, to]
  // The design's own time of the same drive gives way: one drive has one time.
  const others = (drive.times ?? []).filter((one) => !(ends.includes(one.from) && ends.includes(one.to)))
  return { ...robot, drive: { ...drive, times: [{ from, to, seconds }, ...others] } }
}

function withChance(robot: Robot, { finish, probability }: Extract<Override, { kind: 'success' }>): Robot {
  const trip = robot.finish[finish]
  return trip ? { ...robot, finish: { ...robot.finish, [finish]: { ...trip, success: probability } } } : robot
}

/** The label by which an option's adjustment is known as an override of its points. */
export const overrideLabel = ({ id, reason }: Pick<Override, 'id' | 'reason'>): string =>
  `override ${id}: ${reason}`.slice(0, 200)

/** The own numbers that count for the points of an option: those of the whole match alone, or else of its parts. */
export function ownPointsOf(overrides: readonly Override[], option: string): Override[] {
  const own = overrides.filter((one) => 'option' in one && one.option === option)
  const whole = own.find(({ kind }) => kind === 'points')
  return whole ? [whole] : own
}

/** Points that one more piece on a goal is worth to an option: what its pieces there bring on average, or the goal's award. */
export function pointsEach(game: Game, option: Option, goal: string, { pieces, points }: GoalPoints): number {
  if (pieces > 1e-9) return points / pieces
  const award = game.goals.find(({ id }) => id === goal)?.award
  if (!award) return 0
  return award.kind === 'each' ? award.teleop : award.teleopPerSecond * (option.holdSeconds[goal] ?? 0)
}

/**
 * Options whose overridden points are what was set: an adjustment moves all outcomes of the option by what is missing to
 * what is computed, so that its spread, and how it hangs on the unknowns, stay computed. `moves`: that many points, by the
 * override's id; what is not known yet moves nothing.
 */
export function withOverriddenPoints(
  options: readonly Option[],
  overrides: readonly Override[],
  moves: { readonly [override: string]: number },
): Option[] {
  return options.map((option) => {
    const adjustments = ownPointsOf(overrides, option.id).flatMap((override) => {
      const points = moves[override.id]
      return points === undefined ? [] : [{ label: overrideLabel(override), points, rankingPoints: 0 }]
    })
    return adjustments.length > 0 ? { ...option, adjust: [...option.adjust, ...adjustments] } : option
  })
}

/**
 * The unknowns that are still about something where a robot's numbers are overridden: what reaches into the time of an
 * overridden leg, or an overridden chance, is taken away, and an unknown that reaches nothing else with it.
 */
export function withoutOverridden<Unknown extends { paths: string[] }>(
  inputs: readonly Unknown[],
  options: readonly Option[],
  overrides: readonly Override[],
): Unknown[] {
  const closed = options.flatMap(({ robot }, index) =>
    overrides.flatMap((override) => {
      if (!('robot' in override) || override.robot !== robot.id) return []
      const at = `/options/${index}/robot`
      if (override.kind === 'success')
        return [`${at}${legPointer({ kind: 'finish', finish: override.finish })}/success`]
      return override.kind === 'leg' && legOf(robot, override.leg)
        ? ['stages', 'whole'].map((part) => `${at}${legPointer(override.leg)}/${part}`)
        : []
    }),
  )
  return inputs.flatMap((input) => {
    const paths = input.paths.filter((path) => !closed.some((part) => path === part || path.startsWith(`${part}/`)))
    if (paths.length === input.paths.length) return [input]
    return paths.length > 0 ? [{ ...input, paths }] : []
  })
}
