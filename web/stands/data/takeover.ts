import { recall, remember, type StandsDatabase } from './database.ts'
import { type Ask, askFor } from './post.ts'

export interface Takeover {
  event: string
  match: string
  alliance: 'red' | 'blue'
  position: 1 | 2 | 3
}

const same = (a: Takeover, b: Takeover) =>
  a.event === b.event && a.match === b.match && a.alliance === b.alliance && a.position === b.position

/** Takes a seat at once here; the server learns of it when it can be reached. */
export async function takeOver(database: StandsDatabase, seat: Takeover): Promise<void> {
  const before = (await recall(database, 'takeovers')) ?? []
  await remember(database, 'takeovers', [...before.filter((each) => !same(each, seat)), seat])
}

const isAnything = (value: unknown): value is object => typeof value === 'object' && value !== null

/** Tells the server which seats were taken over. What it refuses is forgotten: the record says who watched in any case. */
export async function tellTakeovers(database: StandsDatabase, ask: Ask, now: number): Promise<void> {
  for (const seat of (await recall(database, 'takeovers')) ?? []) {
    const { event, match, alliance, position } = seat
    const body = JSON.stringify({ match, seat: { alliance, position } })
    const init = { method: 'POST', headers: { 'content-type': 'application/json' }, body }
    const path = `/api/events/${encodeURIComponent(event)}/seat`
    const told = await askFor(ask, { path, now, init }, isAnything)
    if ('failed' in told && told.failed !== 'unreadable') return
    const left = ((await recall(database, 'takeovers')) ?? []).filter((each) => !same(each, seat))
    await remember(database, 'takeovers', left)
  }
}
