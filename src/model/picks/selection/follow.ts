import type { Selection } from './selection.ts'
import type { SelectionAlliance, SelectionState } from './types.ts'

/** Robots of an alliance, its captain first; none where it has no captain. */
export const membersOf = ({ captain, partners }: SelectionAlliance): string[] =>
  captain === null ? [] : [captain, ...partners]

/** The alliance that a team is in, if it is in one. */
export const allianceOf = ({ alliances }: Pick<SelectionState, 'alliances'>, team: string): SelectionAlliance | null =>
  alliances.find((alliance) => membersOf(alliance).includes(team)) ?? null

/** Whether a team is in the alliance whose turn it is. */
export const onTurn = (state: SelectionState, team: string): boolean =>
  state.turn !== null && allianceOf(state, team)?.number === state.turn.alliance

/**
 * A selection gone on with: who is invited accepts.
 * @param choose whom the alliance on turn invites; null ends it
 */
export function follow(selection: Selection, choose: (state: SelectionState) => string | null): Selection {
  let now = selection
  while (now.state.turn) {
    const team = choose(now.state)
    if (team === null) break
    now = now.take({ kind: 'accepts', team })
  }
  return now
}

/** The first of these teams by an order; null where there is none. */
export function bestOf(teams: readonly string[], order: ReadonlyMap<string, number>): string | null {
  let best: string | null = null
  let least = Number.POSITIVE_INFINITY
  for (const team of teams) {
    const place = order.get(team) ?? Number.MAX_VALUE
    if (place < least) {
      best = team
      least = place
    }
  }
  return best
}
