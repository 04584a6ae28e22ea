import type { Game, Option, Role } from '../../../../src/model/documents/types.ts'
import { readNumber } from '../../../shell/fields/parse.ts'
import { plain } from '../../../words/format.ts'
import { type Choice, type Mark, marks } from './lineupSetup.ts'

type Places = Pick<Game, 'goals' | 'finishes' | 'clock'>

/** Goals and finishes that the robot can do at all, in the game's order. */
export const able = ({ robot }: Option, game: Pick<Game, 'goals' | 'finishes'>) => ({
  goals: game.goals.flatMap(({ id }) => (robot.score[id] ? [id] : [])),
  finishes: game.finishes.flatMap(({ id }) => (robot.finish[id] ? [id] : [])),
})

/** At first it may do what its way to play has it do. Who marks nobody yet would, if it may, until the endgame opens. */
export function firstChoice(option: Option, game: Places): Choice {
  const { goals, finishes } = able(option, game)
  const { defend } = option.role
  const has = (ids: readonly string[]) => (id: string) => ids.includes(id)
  const { teleop, endgame } = game.clock
  return {
    of: option.id,
    settled: false,
    goals: goals.filter(has(option.role.goals)),
    finishes: finishes.filter(has(option.role.finishes)),
    marks: [defend ? (String(defend.mark) as Mark) : 'nobody'],
    from: plain(defend?.from ?? teleop, 1),
    until: plain(defend?.until ?? Math.min(endgame, teleop / 2), 1),
  }
}

/** A choice from an address with what is there: places that the robot can do. */
export function withAble(choice: Choice, option: Option, game: Places): Choice {
  const can = able(option, game)
  return {
    ...choice,
    goals: can.goals.filter((id) => choice.goals.includes(id)),
    finishes: can.finishes.filter((id) => choice.finishes.includes(id)),
  }
}

/** The times between which it marks; null where something else was typed. */
export function windowOf(
  { from, until }: Choice,
  { clock }: Pick<Game, 'clock'>,
): { from: number; until: number } | null {
  const [begins, ends] = [from, until].map((text) => readNumber(text, { min: 0, max: clock.teleop }))
  if (!begins || !ends || !('value' in begins) || !('value' in ends)) return null
  return begins.value > ends.value ? { from: begins.value, until: ends.value } : null
}

/** Whether times are asked for: it may mark somebody. */
export const mayMark = (choice: Choice): boolean => !choice.settled && choice.marks.some((mark) => mark !== 'nobody')

function defences(choice: Choice, option: Option, game: Places): Role['defend'][] {
  const times = windowOf(choice, game)
  const own = option.role.defend
  const all = marks.flatMap((mark): Role['defend'][] => {
    if (!choice.marks.includes(mark)) return []
    if (mark === 'nobody') return [null]
    return times ? [{ mark: Number(mark) as 0 | 1 | 2, ...times }] : []
  })
  const first = all.findIndex((one) => JSON.stringify(one) === JSON.stringify(own))
  // Its own stands first, as its own goals do.
  const ordered = first > 0 ? [all[first]!, ...all.filter((_, at) => at !== first)] : all
  return ordered.length > 0 ? ordered : [null]
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
 * The roles that a choice leaves to a robot: selections of its goals, each with one of its finishes and with one opponent to
 * mark, or none. Its own role stands first where the choice allows it. Sources are those of its way to play.
 */
export function rolesOf(option: Option, choice: Choice, game: Places): Role[] {
  const { role } = option
  if (choice.settled) return [role]
  const can = able(option, game)
  const defends = defences(choice, option, game)
  const own: Role = {
    ...role,
    goals: role.goals.filter((id) => can.goals.includes(id)),
    finishes: role.finishes.filter((id) => can.finishes.includes(id)),
  }
  const allowed =
    own.goals.every((id) => choice.goals.includes(id)) &&
    own.finishes.every((id) => choice.finishes.includes(id)) &&
    defends.some((defend) => JSON.stringify(defend) === JSON.stringify(own.defend))
  const ends =
    option.finish.mode === 'skip' || choice.finishes.length === 0 ? [[]] : choice.finishes.map((finish) => [finish])
  const all = selections(choice.goals).flatMap((goals) =>
    ends.flatMap((finishes) => defends.map((defend): Role => ({ ...role, goals, finishes, defend }))),
  )
  return allowed ? [own, ...all.filter((one) => !sameRole(one, own))] : all
}
