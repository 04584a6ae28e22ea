import { candidatesFor } from '../../src/model/match/lineup/candidates.ts'
import { LineupPlayers } from '../../src/model/match/lineup/player.ts'
import type { Questions } from './protocol.ts'

const players = new LineupPlayers()

export const candidates = ({
  request,
}: Questions['lineupCandidates']['ask']): Questions['lineupCandidates']['answer'] => candidatesFor(request)

/** Round after round of one search: what robots can do in each role is worked out once. */
export function lineupMatches({
  request,
  lineups,
  from,
  to,
}: Questions['lineupMatches']['ask']): Questions['lineupMatches']['answer'] {
  const player = players.for(request)
  return lineups.map((each) => player.played(each, from, to))
}
