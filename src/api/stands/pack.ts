import { createHash } from 'node:crypto'
import { notFound, read } from '../documents/read.ts'
import type { Context } from '../trpc.ts'
import type { Pack } from './contracts.ts'

/** The event, its game at the newest revision, and who watches whom. */
export async function packOf({ workspace }: Pick<Context, 'workspace'>, event: string): Promise<Pack> {
  const found = await read(workspace, 'event', { id: event })
  if (!found || found.removed) throw notFound('event', { id: event })
  const game = await read(workspace, 'game', { id: found.body.game })
  if (!game) throw notFound('game', { id: found.body.game })
  return {
    event: found.body,
    game: { revision: game.revision, body: game.body },
    matches: [],
    assignments: [],
    people: [],
  }
}

/** The same for the same contents, after a restart too. */
export function markOf(pack: Pack): string {
  return createHash('sha256').update(JSON.stringify(pack)).digest('base64url').slice(0, 22)
}
