import type { OverriddenLeg, Override } from './records.ts'
import type { Option, Robot, Trip } from './types.ts'

type LegOverride = Extract<Override, { kind: 'leg' }>

/** What an override is about, as one text: no two of a comparison have the same. */
export const overriddenThing = (override: Override): string =>
  override.kind === 'points' ? `points ${override.option}` : `leg ${override.robot} ${legPointer(override.leg)}`

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

/** A robot with its overridden legs: each takes its own whole time, wherever it starts. Legs that it has not are left out. */
export const withOverriddenLegs = (robot: Robot, overrides: readonly Override[]): Robot =>
  overrides.reduce((changed, override) => (override.kind === 'leg' ? withLeg(changed, override) : changed), robot)

/** The label by which an option's adjustment is known as an override of its points. */
export const overrideLabel = ({ id, reason }: Pick<Override, 'id' | 'reason'>): string =>
  `override ${id}: ${reason}`.slice(0, 200)

/**
 * Options whose overridden points are what was set: an adjustment moves all outcomes of the option by what is missing to
 * the computed mean, so that its spread, and how it hangs on the unknowns, stay computed. `computed`: expected points of the
 * option without the adjustment, by its id; an option that has none yet stays as it is.
 */
export function withOverriddenPoints(
  options: readonly Option[],
  overrides: readonly Override[],
  computed: { readonly [option: string]: number },
): Option[] {
  return options.map((option) => {
    const override = overrides.find((one) => one.kind === 'points' && one.option === option.id)
    const mean = computed[option.id]
    if (override?.kind !== 'points' || mean === undefined) return option
    const adjustment = { label: overrideLabel(override), points: override.points - mean, rankingPoints: 0 }
    return { ...option, adjust: [...option.adjust, adjustment] }
  })
}

/**
 * The unknowns that are still about something where legs are overridden: what reaches into the time of an overridden leg
 * is taken away, and an unknown that reaches nothing else with it.
 */
export function withoutOverridden<Unknown extends { paths: string[] }>(
  inputs: readonly Unknown[],
  options: readonly Option[],
  overrides: readonly Override[],
): Unknown[] {
  const closed = options.flatMap(({ robot }, index) =>
    overrides.flatMap((override) =>
      override.kind === 'leg' && override.robot === robot.id && legOf(robot, override.leg)
        ? ['stages', 'whole'].map((part) => `/options/${index}/robot${legPointer(override.leg)}/${part}`)
        : [],
    ),
  )
  return inputs.flatMap((input) => {
    const paths = input.paths.filter((path) => !closed.some((part) => path === part || path.startsWith(`${part}/`)))
    if (paths.length === input.paths.length) return [input]
    return paths.length > 0 ? [{ ...input, paths }] : []
  })
}
