import { type ShownPack, type Taken, takenPack } from '../../codes/standsPack.ts'
import { remember, type StandsDatabase } from '../data/database.ts'
import { keepPack } from '../data/pack.ts'

/** Keeps a pack that came by code where it is newer than what the phone has; a game that the code left out is the phone's own. */
export async function applyPack(database: StandsDatabase, shown: ShownPack): Promise<Taken> {
  const own = (await database.packs.get(shown.event.id))?.pack ?? null
  const known = shown.game.body ?? (await database.games.get([shown.event.game, shown.game.revision]))?.body
  const taken = takenPack(known ? { ...shown, game: { ...shown.game, body: known } } : shown, own)
  if ('not' in taken) return taken
  await keepPack(database, taken.pack, { now: Date.parse(taken.pack.serverTime) })
  await remember(database, 'event', shown.event.id)
  return taken
}
