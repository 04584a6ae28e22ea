import type { Format } from '../../../../src/model/picks/playoffs/bracket.ts'
import type { Protocol } from '../../../../src/model/picks/protocol/index.ts'
import type { Selection } from '../../../../src/model/picks/selection/index.ts'
import { askOf as asked, seedsBy as seeded, usualRules } from '../../../../src/model/picks/usual.ts'
import type { EventPack } from '../../../data/eventPack.ts'

export { usualRules } from '../../../../src/model/picks/usual.ts'

/** All teams by the ranking as far as it goes. */
export const seedsBy = ({ event, ranking }: EventPack): string[] =>
  seeded(
    event.teams.map(({ team }) => team),
    ranking.rows.map(({ team }) => team),
  )

/** What is asked about the selection as it is. */
export const askOf = (pack: EventPack, protocol: Protocol, us: string) =>
  asked(protocol, { rules: usualRules(pack.event), seeds: seedsBy(pack), us })

/** 'Alliance 3 with 90004 as captain': of whose turn it is. */
export const captainOnTurn = ({ state }: Selection): string | null =>
  state.turn ? (state.alliances[state.turn.alliance - 1]?.captain ?? null) : null

/** How the playoffs are played, as far as the event says so; common practice where it does not. */
export const formatOf = (playoff: EventPack['event']['playoff'], alliances: number): Format => ({
  format: playoff?.format ?? 'double',
  alliances,
  ...(playoff?.games !== undefined && playoff.games % 2 === 1 ? { games: playoff.games } : {}),
})
