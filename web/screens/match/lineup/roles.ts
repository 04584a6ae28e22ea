import type { Option, Role } from '../../../../src/model/documents/types.ts'

/** What one of our robots may do in the line-up that is looked for. */
export interface Choice {
  /** It does what its way to play says. */
  settled: boolean
  goals: readonly string[]
  finishes: readonly string[]
}

/** Goals and finishes that the robot can do at all, in the game's order. */
export const able = (
  { robot }: Option,
  game: { goals: readonly { id: string }[]; finishes: readonly { id: string }[] },
) => ({
  goals: game.goals.flatMap(({ id }) => (robot.score[id] ? [id] : [])),
  finishes: game.finishes.flatMap(({ id }) => (robot.finish[id] ? [id] : [])),
})

/** At first it may do what its way to play has it do. */
export function firstChoice(option: Option, game: Parameters<typeof able>[1]): Choice {
  const { goals, finishes } = able(option, game)
  const has = (ids: readonly string[]) => (id: string) => ids.includes(id)
  return {
    settled: false,
    goals: goals.filter(has(option.role.goals)),
    finishes: finishes.filter(has(option.role.finishes)),
  }
}

/** Beyond so many goals not every selection is tried: single ones, all but one, and all. */
const everySelection = 3

function selections(ids: readonly string[]): string[][] {
  if (ids.length === 0) return [[]]
  if (ids.length > everySelection)
    return [[...ids], ...ids.map((one) => ids.filter((id) => id !== one)), ...ids.map((id) => [id])]
  return Array.from({ length: 2 ** ids.length - 1 }, (_, mask) => ids.filter((_id, k) => ((mask + 1) >> k) & 1)).sort(
    (a, b) => b.length - a.length,
  )
}

const key = ({ goals, finishes, sources, defend }: Role): string =>
  JSON.stringify([[...goals].sort(), [...finishes].sort(), [...sources].sort(), defend])

export const sameRole = (a: Role, b: Role): boolean => key(a) === key(b)

/**
 * The roles that a choice leaves to a robot: selections of its goals, each with one of its finishes. Its own role stands
 * first where the choice allows it. Sources and defence are those of its way to play.
 */
export function rolesOf(option: Option, choice: Choice, game: Parameters<typeof able>[1]): Role[] {
  const { role } = option
  if (choice.settled) return [role]
  const can = able(option, game)
  const own: Role = {
    ...role,
    goals: role.goals.filter((id) => can.goals.includes(id)),
    finishes: role.finishes.filter((id) => can.finishes.includes(id)),
  }
  const allowed =
    own.goals.every((id) => choice.goals.includes(id)) && own.finishes.every((id) => choice.finishes.includes(id))
  const ends =
    option.finish.mode === 'skip' || choice.finishes.length === 0 ? [[]] : choice.finishes.map((finish) => [finish])
  const all = selections(choice.goals).flatMap((goals) => ends.map((finishes): Role => ({ ...role, goals, finishes })))
  return allowed ? [own, ...all.filter((one) => !sameRole(one, own))] : all
}
