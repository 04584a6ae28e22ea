import type { Game } from '../../src/model/documents/types.ts'
import type { Assignment, EventRecord, Match } from '../../src/model/scouting/types.ts'

/** What `GET /api/stands/{event}` answers: everything that a phone needs to record without a connection. */
export interface StandsPack {
  event: EventRecord
  game: { revision: number; body: Game }
  matches: Match[]
  assignments: Assignment[]
  people: { id: string; nickname: string }[]
  /** ISO 8601, by the server's clock: the later pack is the newer one. */
  serverTime: string
  mark: string
}

/** The same as it goes by code: without the game's body, where phones are known to have that revision. */
export type ShownPack = Omit<StandsPack, 'game'> & { game: { revision: number; body?: Game } }

export const withoutGame = (pack: StandsPack): ShownPack => ({ ...pack, game: { revision: pack.game.revision } })

const isList = Array.isArray

export function isShownPack(value: unknown): value is ShownPack {
  const pack = value as Partial<ShownPack> | null
  return (
    typeof pack?.event?.id === 'string' &&
    typeof pack.game?.revision === 'number' &&
    isList(pack.matches) &&
    isList(pack.assignments) &&
    isList(pack.people) &&
    typeof pack.serverTime === 'string' &&
    typeof pack.mark === 'string'
  )
}

/** What becomes of a pack that was read from a code. `needsGame`: the phone lacks this revision, and the code left it out. */
export type Taken = { pack: StandsPack } | { not: 'older' | 'same' | 'needsGame' }

/** A phone takes a pack that is newer than its own; the game it has stays where the code brings none. */
export function takenPack(shown: ShownPack, own: StandsPack | null): Taken {
  if (own?.mark === shown.mark) return { not: 'same' }
  if (own && Date.parse(own.serverTime) >= Date.parse(shown.serverTime)) return { not: 'older' }
  const { revision } = shown.game
  const known = own && own.event.game === shown.event.game && own.game.revision === revision ? own.game.body : undefined
  const body = shown.game.body ?? known
  return body ? { pack: { ...shown, game: { revision, body } } } : { not: 'needsGame' }
}
