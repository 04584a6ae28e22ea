import type { Pool, PoolClient } from 'pg'
import { rowsOf } from '../records/batch.ts'
import type { TakeIn } from '../records/intake.ts'
import { outcomesOf } from './intakeOutcomes.ts'
import * as ask from './intakeQueries.ts'
import { takeTurns } from './turns.ts'

/**
 * Batches in one transaction, by a handful of statements however many rows they have: each is a way to the server and back. The
 * workspaces' turns are held until the commit, so that arrivals become visible in their order.
 */
export function takeInOn(pool: Pool): TakeIn {
  return async (together) => {
    const client = await pool.connect()
    try {
      await client.query('BEGIN')
      const accepted = await taken(client, together)
      await client.query('COMMIT')
      client.release()
      return accepted
    } catch (error) {
      await client.query('ROLLBACK').then(
        () => client.release(),
        () => client.release(true),
      )
      throw error
    }
  }
}

async function taken(client: PoolClient, handedIn: Parameters<TakeIn>[0]): ReturnType<TakeIn> {
  const together = handedIn.map(({ place, batch }) => ({ place, batch: { ...batch, rows: rowsOf(batch) } }))
  await takeTurns(
    client,
    together.map(({ place }) => place.workspaceId),
  )
  const rows = together.flatMap(({ place, batch }) =>
    batch.rows.map((cells) => ({ place, person: batch.person, cells })),
  )
  const events = await ask.knownEvents(client, rows)
  const before = await ask.hashesOf(client, rows)
  const counted = await ask.countsOf(client, together)
  const found = outcomesOf(together, { events, before, counted })
  await ask.addRecords(client, found.fresh)
  const kept = new Set(await ask.keepApart(client, found.apart))
  await ask.noteDevices(client, together)
  return found.accepted(kept)
}
