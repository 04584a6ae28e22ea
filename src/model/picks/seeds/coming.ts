import { inOrder, voided } from '../../event/order.ts'
import { seatKey, slotsOf } from '../../event/seats.ts'
import type { Match, Side } from '../../scouting/types.ts'
import type { SeedMatch, SeedSlot } from './types.ts'

/** Matches of the ranking that are still to come, in the order of play. Red is the first side. Who is marked absent or disqualified beforehand counts for nothing. */
export function comingMatches(matches: readonly Match[], over: ReadonlySet<string>): SeedMatch[] {
  const gone = voided(matches)
  return matches
    .filter(({ id, phase }) => phase === 'qualification' && !gone.has(id) && !over.has(id))
    .toSorted(inOrder)
    .map((match): SeedMatch => {
      const at = new Map(slotsOf(match).map(({ seat, slot }) => [seatKey(seat), slot]))
      const side = (alliance: 'red' | 'blue'): SeedSlot[] =>
        ([1, 2, 3] as const).map((position) => {
          const { team, counts, state } = at.get(seatKey({ alliance, position })) as Side[number]
          return { team, counts: counts && state !== 'absent' && state !== 'disqualified' }
        })
      return { id: match.id, ours: side('red'), theirs: side('blue') }
    })
}
