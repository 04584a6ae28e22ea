import type { Match, Result } from '../../scouting/types.ts'
import type { Tie } from './bracket.ts'
import type { BracketStanding } from './play.ts'

/** A bracket as far as it was played. */
export interface Played {
  /** Games won, by tie. */
  standing: BracketStanding
  /** By tie, who meets in it and who has won it, by number; null: not known yet. */
  ties: { meets: readonly [number | null, number | null]; winner: number | null }[]
  /** Matches that fit no tie that is open: other alliances than the bracket has meet there. */
  apart: string[]
}

export interface PlayedRequest {
  ties: readonly Tie[]
  /** Robots by alliance, in the order of the alliances. */
  alliances: readonly (readonly string[])[]
  /** In the order of play; matches that were voided left out. */
  matches: readonly Match[]
  results: readonly Result[]
}

/** What results of the playoffs say of a bracket. A tied game counts for nobody: it is played again. */
export function playedBracket({ ties, alliances, matches, results }: PlayedRequest): Played {
  const wins: { [alliance: number]: number }[] = ties.map(() => ({}))
  const apart: string[] = []
  const totals = new Map(results.map(({ match, red, blue }) => [match, [red.points.total, blue.points.total] as const]))
  /** Whose robots they are: of one alliance all. */
  const numberOf = (side: Match['red']) =>
    alliances.findIndex((members) => side.every(({ team }) => members.includes(team))) + 1
  for (const match of matches) {
    const total = totals.get(match.id)
    if (match.phase !== 'playoff' || !total) continue
    const sides = [numberOf(match.red), numberOf(match.blue)] as const
    const now = resolved(ties, wins)
    const at = now.findIndex(({ meets, winner }) => winner === null && sides.every((side) => meets.includes(side)))
    if (at < 0 || sides[0] === sides[1]) {
      apart.push(match.id)
      continue
    }
    const lead = total[0] - total[1]
    if (lead === 0) continue
    const winner = lead > 0 ? sides[0] : sides[1]
    const own = wins[at] as { [alliance: number]: number }
    own[winner] = (own[winner] ?? 0) + 1
  }
  return { standing: wins, ties: resolved(ties, wins), apart }
}

function resolved(ties: readonly Tie[], wins: readonly { readonly [alliance: number]: number }[]): Played['ties'] {
  const known: Played['ties'] = []
  for (const [k, { from, games }] of ties.entries()) {
    const meets = from.map((each) => {
      if (each.kind === 'alliance') return each.number
      const before = known[each.tie]
      if (!before || before.winner === null) return null
      return each.kind === 'winner' ? before.winner : (before.meets.find((own) => own !== before.winner) ?? null)
    }) as [number | null, number | null]
    const winner = meets.find((own) => own !== null && (wins[k]?.[own] ?? 0) > games / 2) ?? null
    known.push({ meets, winner })
  }
  return known
}
