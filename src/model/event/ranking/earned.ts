import type { Bonus, Game } from '../../documents/types.ts'
import { type Alliance, alliances, type Result, type ResultSide } from '../../scouting/types.ts'
import { otherAlliance } from '../seats.ts'

/** What of a game a ranking needs. */
export type RankedGame = Pick<Game, 'bonuses' | 'ranking'>

export type Outcome = 'won' | 'tied' | 'lost'

/** What an alliance earned in a match that counts. */
export interface Earned {
  outcome: Outcome
  /** Ids of the bonuses that it reached. */
  bonuses: string[]
  /** Bonuses of which the result does not tell whether they were reached. */
  untold: string[]
  rankingPoints: number
}

/**
 * What both alliances earned. A result that names the bonuses is believed; one without is asked for what its categories say:
 * pieces, points in autonomous and of finishes. Which finishes were reached and how long something was held no result tells.
 */
export function earnedIn(game: RankedGame, level: string | undefined, result: Result): Record<Alliance, Earned> {
  const [red, blue] = alliances.map((alliance) => earnedBy(game, { level, result, alliance }))
  return { red: red!, blue: blue! }
}

function earnedBy(game: RankedGame, at: { level: string | undefined; result: Result; alliance: Alliance }): Earned {
  const { result, alliance } = at
  const [own, other] = [result[alliance], result[otherAlliance(alliance)]]
  const lead = own.points.total - other.points.total
  const outcome: Outcome = lead > 0 ? 'won' : lead < 0 ? 'lost' : 'tied'
  const said = own.bonuses
  const told = game.bonuses.map((bonus) => ({
    bonus,
    reached: said ? said.includes(bonus.id) : reached(bonus, at.level, [own, other]),
  }))
  const bonuses = told.filter((each) => each.reached === true).map(({ bonus }) => bonus)
  const { win, tie, loss } = game.ranking
  return {
    outcome,
    bonuses: bonuses.map(({ id }) => id),
    untold: told.filter((each) => each.reached === null).map(({ bonus }) => bonus.id),
    rankingPoints:
      { won: win, tied: tie, lost: loss }[outcome] + bonuses.reduce((sum, { rankingPoints }) => sum + rankingPoints, 0),
  }
}

/** Whether a bonus was reached, null where that can not be told. */
function reached(bonus: Bonus, level: string | undefined, [own, other]: [ResultSide, ResultSide]): boolean | null {
  const { atLeast, scope } = bonus
  const needed = typeof atLeast === 'number' ? atLeast : level === undefined ? undefined : atLeast[level]
  const amounts = (scope === 'both' ? [own, other] : [own]).map((side) => amountOf(bonus, side))
  if (needed === undefined || amounts.includes(null)) return null
  return amounts.reduce<number>((sum, amount) => sum + (amount ?? 0), 0) >= needed
}

function amountOf({ metric }: Bonus, { points, pieces }: ResultSide): number | null {
  switch (metric.kind) {
    case 'autoPoints':
      return points.autonomous ?? null
    case 'finishPoints':
      return points.finishes ?? null
    case 'pieces':
      return piecesAt(metric.goals, pieces)
    default:
      return null
  }
}

/** Pieces at these goals together, null where one of them is not told. */
export function piecesAt(goals: readonly string[], pieces: ResultSide['pieces']): number | null {
  const counts = goals.map((goal) => pieces?.[goal])
  return counts.includes(undefined) ? null : counts.reduce<number>((sum, count) => sum + (count ?? 0), 0)
}
