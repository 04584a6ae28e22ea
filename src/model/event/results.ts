import type { Game } from '../documents/types.ts'
import { alliances, type Match, type Result } from '../scouting/types.ts'
import { type Finding, finding, named } from './check.ts'

/** What is wrong in results, or odd about them. `match` of a finding is the id that the result names. */
export function checkResults(
  game: Pick<Game, 'bonuses' | 'goals'>,
  matches: readonly Match[],
  results: readonly Result[],
): Finding[] {
  const known = new Map(matches.map((match) => [match.id, match]))
  const voiding = new Map(
    matches.flatMap((match) => (match.voids === undefined ? [] : [[match.voids, match] as const])),
  )
  const seen = new Set<string>()
  return results.flatMap((result): Finding[] => {
    const match = known.get(result.match)
    if (!match) return [finding(result.match, 'wrong', { code: 'noMatch', parts: { id: result.match } })]
    const found = checkSides(game, match, result)
    if (seen.has(match.id))
      found.push(finding(match.id, 'wrong', { code: 'resultTwice', parts: { match: named(match) } }))
    seen.add(match.id)
    const by = voiding.get(match.id)
    if (by)
      found.push(finding(match.id, 'odd', { code: 'resultOfVoided', parts: { match: named(match), by: named(by) } }))
    return found
  })
}

function checkSides(game: Pick<Game, 'bonuses' | 'goals'>, match: Match, result: Result): Finding[] {
  const bonuses = new Set(game.bonuses.map(({ id }) => id))
  const goals = new Set(game.goals.map(({ id }) => id))
  return alliances.flatMap((alliance) => {
    const side = result[alliance]
    const { total, autonomous = 0, goals: inTeleop = 0, finishes = 0, fromFouls = 0 } = side.points
    const parts = autonomous + inTeleop + finishes + fromFouls
    const of = named(match)
    return [
      ...(side.bonuses ?? [])
        .filter((id) => !bonuses.has(id))
        .map((id) => finding(match.id, 'wrong', { code: 'unknownBonus', parts: { match: of, id } })),
      ...Object.keys(side.pieces ?? {})
        .filter((id) => !goals.has(id))
        .map((id) => finding(match.id, 'wrong', { code: 'unknownGoal', parts: { match: of, id } })),
      // Sets and bonuses pay points of no category, so that the total may well be more than its parts.
      ...(parts > total + 1e-9
        ? [finding(match.id, 'odd', { code: 'partsAboveTotal', parts: { match: of, alliance, parts, total } })]
        : []),
    ]
  })
}
