import type { Game } from '../../../../src/model/documents/types.ts'
import { type IdTable, idTable } from '../../../../src/model/scouting/code/index.ts'
import type { FindTable } from '../../../codes/rows.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { getDocument } from '../../../data/api.ts'

/** Tables of the games that records were made with: of the event on the screen at once, of others from the server. */
export function tablesOf(pack: StandsPack): FindTable {
  const known = new Map<string, IdTable>([[`${pack.event.id} ${pack.game.revision}`, idTable(pack.game.body)]])
  return async (event, revision) => {
    const key = `${event} ${revision}`
    const found = known.get(key) ?? (await asked(pack, event, revision))
    if (found) known.set(key, found)
    return found
  }
}

async function asked(pack: StandsPack, event: string, revision: number): Promise<IdTable | null> {
  try {
    const game =
      event === pack.event.id ? pack.event.game : ((await getDocument('event', event)).body as { game: string }).game
    return idTable((await getDocument('game', game, revision)).body as Game)
  } catch (error) {
    // Not there; but a server that can not be reached is another matter.
    if ((error as { data?: unknown }).data) return null
    throw error
  }
}
