import { createHash } from 'node:crypto'
import type { Match, Side, Slot } from '../../model/scouting/index.ts'
import { notFound, read } from '../documents/read.ts'
import type { Context } from '../trpc.ts'
import type { Pack } from './contracts.ts'

/** The event, its game at the newest revision, and who watches whom. Robots of a match that has a result are told as played. */
export async function packOf({ workspace }: Pick<Context, 'workspace'>, event: string): Promise<Pack> {
  const found = await read(workspace, 'event', { id: event })
  if (!found || found.removed) throw notFound('event', { id: event })
  const [game, { matches }, results, { assignments }, people] = await Promise.all([
    read(workspace, 'game', { id: found.body.game }),
    workspace.events.matches(event),
    workspace.events.results(event),
    workspace.events.assignments(event),
    workspace.people.list(),
  ])
  if (!game) throw notFound('game', { id: found.body.game })
  const over = new Set(results.flatMap(({ match, result }) => (result === null ? [] : [match])))
  return {
    event: found.body,
    game: { revision: game.revision, body: game.body },
    matches: matches.map(({ match }) => (over.has(match.id) ? played(match) : match)),
    assignments,
    people: people.filter(({ endedAt }) => endedAt === null).map(({ id, nickname }) => ({ id, nickname })),
  }
}

function played(match: Match): Match {
  const side = (slots: Side) =>
    slots.map((slot): Slot => (slot.state === 'expected' ? { ...slot, state: 'played' } : slot)) as Side
  return { ...match, red: side(match.red), blue: side(match.blue) }
}

/** The same for the same contents, after a restart too. */
export function markOf(pack: Pack): string {
  return createHash('sha256').update(JSON.stringify(pack)).digest('base64url').slice(0, 22)
}
