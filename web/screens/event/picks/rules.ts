import type { Format } from '../../../../src/model/picks/playoffs/bracket.ts'
import type { Protocol } from '../../../../src/model/picks/protocol/index.ts'
import type { Selection, SelectionRules, SelectionStep } from '../../../../src/model/picks/selection/index.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import type { PicksAsk } from '../../../worker/protocol.ts'

/** What is usual, by what the event says of its playoffs. */
export function usualRules({ playoff, teams }: EventPack['event']): SelectionRules {
  const alliances = playoff?.alliances ?? Math.max(2, Math.min(8, Math.floor(teams.length / 4)))
  return { alliances, size: playoff?.size ?? 4, serpentine: true, captainsInvitable: true, afterDeclining: 'captain' }
}

/** All teams by the ranking as far as it goes, the others behind in the event's order. */
export function seedsBy({ event, ranking }: EventPack): string[] {
  const ranked = ranking.rows.map(({ team }) => team)
  return [...ranked, ...event.teams.map(({ team }) => team).filter((team) => !ranked.includes(team))]
}

export const stepsIn = ({ inForce }: Protocol): SelectionStep[] =>
  inForce.flatMap(({ line }) => (line.kind === 'called' ? [line.step] : []))

/** What is asked about the selection as it is; before it has begun, about its beginning as it would be now. */
export function askOf(pack: EventPack, protocol: Protocol, us: string): PicksAsk {
  const { rules, seeds } = protocol.selection?.state ?? { rules: usualRules(pack.event), seeds: seedsBy(pack) }
  return { rules, seeds, steps: stepsIn(protocol), us, aside: [...protocol.aside.keys()] }
}

/** 'Alliance 3 with 90004 as captain': of whose turn it is. */
export const captainOnTurn = ({ state }: Selection): string | null =>
  state.turn ? (state.alliances[state.turn.alliance - 1]?.captain ?? null) : null

/** How the playoffs are played, as far as the event says so; common practice where it does not. */
export const formatOf = (playoff: EventPack['event']['playoff'], alliances: number): Format => ({
  format: playoff?.format ?? 'double',
  alliances,
  ...(playoff?.games !== undefined && playoff.games % 2 === 1 ? { games: playoff.games } : {}),
})
