import { candidatesFor } from './candidates.ts'
import { LineupPlayer } from './player.ts'
import { searchLineups } from './search.ts'
import type { LineupReport, LineupRequest } from './types.ts'

/** The best line-up by one player, at once: see `searchLineups`. */
export function lineup(request: LineupRequest): Promise<LineupReport> {
  const player = new LineupPlayer(request)
  return searchLineups(request, {
    lineups: candidatesFor(request),
    play: async (lineups, from, to) => lineups.map((each) => player.played(each, from, to)),
  })
}
