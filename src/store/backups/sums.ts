import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'
import type { TableSum } from './types.ts'

const quoted = (name: string) => `"${name.replaceAll('"', '""')}"`

/** Bytes as text of their own kind, so that they are not taken for a text of the same letters. */
const value = (each: unknown) =>
  Buffer.isBuffer(each) ? { bytes: each.toString('base64') } : typeof each === 'bigint' ? { integer: `${each}` } : each

/**
 * Rows and hashes of all tables. The same rows give the same sums wherever they lie in the file. Within a transaction of the
 * caller they are of its state.
 */
export function tableSums(database: Database.Database): TableSum[] {
  const tables = database
    .prepare(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`)
    .pluck()
    .all() as string[]
  return tables.map((table) => {
    const columns = database.pragma(`table_info(${quoted(table)})`) as { name: string; pk: number }[]
    const key = columns.filter(({ pk }) => pk > 0).sort((a, b) => a.pk - b.pk)
    const order = (key.length > 0 ? key : columns).map(({ name }) => quoted(name)).join(', ')
    const all = database
      .prepare(`SELECT * FROM ${quoted(table)} ORDER BY ${order}`)
      .raw()
      .safeIntegers()
    const hash = createHash('sha256').update(JSON.stringify(columns.map(({ name }) => name)))
    let rows = 0
    for (const row of all.iterate() as IterableIterator<unknown[]>) {
      hash.update('\n').update(JSON.stringify(row.map(value)))
      rows++
    }
    return { table, rows, sha256: hash.digest('hex') }
  })
}

/** What two states of a database differ in, a sentence a table. */
export function differences(before: readonly TableSum[], after: readonly TableSum[]): string[] {
  const names = [...new Set([...before, ...after].map(({ table }) => table))].sort()
  return names.flatMap((name) => {
    const [was, is] = [before, after].map((sums) => sums.find(({ table }) => table === name))
    if (!was) return [`${name} was not in the database`]
    if (!is) return [`${name} is missing`]
    if (was.rows !== is.rows) return [`${name} has ${is.rows} rows instead of ${was.rows}`]
    return was.sha256 === is.sha256 ? [] : [`${name} holds other values`]
  })
}
