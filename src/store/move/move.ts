import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { projectRoot } from '../../root.ts'
import { StoreError } from '../errors.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { type OpenOptions, openDatabase } from '../open.ts'
import { type Table, tablesOf } from './tables.ts'

/** What was moved of a table. */
export interface MovedTable {
  table: string
  rows: number
  /** SHA-256 of all its rows, alike on both sides. */
  hash: string
}

/** Rows are read and written so many at a time. */
const mostRows = 500

/** As long as it takes (ms). */
const options = { maxWait: 60_000, timeout: 6 * 3_600_000 }

type Row = Record<string, unknown>

/** What is asked of any table; the client has one such for each. */
interface Rows {
  findMany(of: object): Promise<Row[]>
  createMany(of: { data: Row[] }): Promise<unknown>
}

/**
 * Copies a workspace with everything in it from one database into another, of whichever engine: in one commit, after what was
 * written is read again and its hashes are those of what was read. The source stays as it is. Throws a StoreError whose message is for the user.
 */
export async function moveWorkspace(of: {
  from: string
  to: string
  name: string
  options?: OpenOptions
}): Promise<MovedTable[]> {
  const tables = tablesOf(readFileSync(join(projectRoot(), 'prisma', 'schema.prisma'), 'utf8'))
  const opening = { ...of.options, now: of.options?.now ?? (() => new Date()) }
  const source = await openDatabase(of.from, opening)
  try {
    const found = await source.client.workspace.findUnique({ where: { name: of.name } })
    if (!found) throw new StoreError(`The database that is moved from has no workspace “${of.name}”.`)
    const target = await openDatabase(of.to, opening)
    try {
      const { id, name } = found
      const taken = await target.client.workspace.findFirst({ where: { OR: [{ id }, { name }] } })
      if (taken)
        throw new StoreError(
          `The database that is moved to has a workspace “${taken.name}” already, and nothing of it is overwritten.`,
        )
      // Both in their turns, so that all of it is of one moment.
      return await source
        .inTurn(id)
        .$transaction(
          (reading) => target.inTurn(id).$transaction((writing) => copy({ reading, writing, id, tables }), options),
          options,
        )
    } finally {
      await target.close()
    }
  } finally {
    await source.close()
  }
}

async function copy(of: {
  reading: TransactionClient
  writing: TransactionClient
  id: string
  tables: readonly Table[]
}): Promise<MovedTable[]> {
  const { reading, writing, id, tables } = of
  const moved: MovedTable[] = []
  for (const table of tables) {
    const read = new TableHash()
    for await (const rows of pagesOf(reading, table, id)) {
      read.add(rows)
      await rowsOf(writing, table).createMany({ data: rows })
    }
    const written = new TableHash()
    for await (const rows of pagesOf(writing, table, id)) written.add(rows)
    const [before, after] = [read.digest(), written.digest()]
    if (before.rows !== after.rows || before.hash !== after.hash)
      throw new StoreError(
        `What was written of ${table.name} is not what was read (${after.rows} rows of ${before.rows}), so nothing of it was kept.`,
      )
    moved.push({ table: table.name, ...before })
  }
  return moved
}

const rowsOf = (client: TransactionClient, { name }: Table): Rows =>
  client[`${name[0]!.toLowerCase()}${name.slice(1)}` as 'workspace'] as unknown as Rows

/** A table's rows of a workspace in the order of their keys, without what the database counts up. */
async function* pagesOf(client: TransactionClient, table: Table, id: string): AsyncGenerator<Row[]> {
  const where = table.name === 'Workspace' ? { id } : { workspaceId: id }
  const select = Object.fromEntries(table.columns.map((column) => [column, true]))
  const orderBy = (table.counted === null ? table.key : [table.counted]).map((column) => ({ [column]: 'asc' }))
  for (let skip = 0; ; skip += mostRows) {
    const rows = await rowsOf(client, table).findMany({ where, select, orderBy, skip, take: mostRows })
    if (rows.length > 0) yield rows
    if (rows.length < mostRows) return
  }
}

/** The same for the same rows in the same order, whichever engine they come from. */
class TableHash {
  readonly #hash = createHash('sha256')
  #rows = 0

  add(rows: readonly Row[]): void {
    this.#rows += rows.length
    for (const row of rows) this.#hash.update(`${JSON.stringify(Object.entries(row).sort(byName))}\n`)
  }

  digest() {
    return { rows: this.#rows, hash: this.#hash.digest('hex') }
  }
}

const byName = ([a]: [string, unknown], [b]: [string, unknown]) => (a < b ? -1 : 1)
