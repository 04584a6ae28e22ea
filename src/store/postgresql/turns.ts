import type { ClientBase } from 'pg'

/** What an advisory lock is called: such locks are shared by all that use the database, other programs too. */
export const keyOf = (name: string): string => `cyclewright ${name}`

/** Takes locks until the transaction's end, in an order that all keep, so that no two wait for each other. */
export async function takeTurns(client: ClientBase, names: Iterable<string>): Promise<void> {
  for (const name of [...new Set(names)].sort())
    await client.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [keyOf(name)])
}
