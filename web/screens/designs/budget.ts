import type { Game, Robot } from '../../../src/model/documents/types.ts'
import type { Problem } from '../../../src/model/errors.ts'
import type { System } from '../../units/quantities.ts'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

export interface Against {
  what: 'mass' | 'cost'
  value: number
  limit: number
  words: string
  over: boolean
}

/** Less than this of a limit is no difference: what was typed in pounds is not exact in kilograms. */
const exact = 1e-6

/** A design's mass and cost against the game's limits, in words and the units chosen; nothing where either is not given. */
export function againstLimits(game: Game, { budget }: Robot, system: System): Against[] {
  const { limits } = game
  const texts = words().budget
  if (!limits || !budget) return []
  const say = {
    mass: (value: number) => sayQuantity(value, 'mass', system, 2),
    cost: (value: number) => plain(value, 2),
  }
  return (['mass', 'cost'] as const).map((what) => {
    const [value, limit] = [budget[what], limits[what]]
    const by = value - limit
    const over = by > exact * limit
    const [said, most, rest] = [value, limit, Math.abs(by)].map(say[what]) as [string, string, string]
    const same = Math.abs(by) <= exact * limit
    return {
      what,
      value,
      limit,
      over,
      words: over ? texts.over(said, most, rest) : same ? texts.exact(said) : texts.left(said, most, rest),
    }
  })
}

/** What is over a limit, for its field. */
export const budgetNotes = (game: Game, robot: Robot, system: System): Problem[] =>
  againstLimits(game, robot, system)
    .filter(({ over }) => over)
    .map(({ what, words: message }) => ({ path: ['budget', what], message }))
