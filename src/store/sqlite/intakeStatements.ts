import { columns } from '../../model/scouting/cells.ts'
import type { Direct } from './direct.ts'

type Cells = readonly unknown[]

/** What is asked of the engine while a batch is taken in, within a transaction. */
export interface Statements {
  /** Whether the workspace has such an event. */
  knowsEvent(workspaceId: string, event: string): boolean
  /** Adds a record unless its id is taken; whether it did. */
  add(cells: Cells): boolean
  /** Of the record with this id. */
  hash(workspaceId: string, id: string): string | undefined
  /** Keeps a row for a lead to decide unless it is kept already; whether it did. */
  keepApart(cells: Cells): boolean
  /** What a device says of itself. */
  note(cells: Cells): void
  /** How much of a device is held, and how much of it is kept apart undecided. */
  counted(workspaceId: string, device: string): { held: number; apart: number }
}

const list = (names: readonly string[]) => names.map((name) => `"${name}"`).join(', ')
const placesFor = (names: readonly string[]) => names.map(() => '?').join(', ')

/** In this order come the cells of a record. */
const recordCells = ['workspaceId', 'receivedAt', 'person', ...columns]
/** And those of what is kept apart. */
const apartCells = ['workspaceId', 'receivedAt', 'person', 'id', 'event', 'device', 'hash', 'body', 'reason']

export function statementsOn(database: Direct): Statements {
  const event = database
    .prepare(`SELECT 1 FROM "Document" WHERE "workspaceId" = ? AND "kind" = 'event' AND "id" = ?`)
    .pluck()
  const add = database.prepare(
    `INSERT INTO "FieldRecord" (${list(recordCells)}) VALUES (${placesFor(recordCells)})
     ON CONFLICT ("workspaceId", "id") DO NOTHING`,
  )
  const hash = database.prepare(`SELECT "hash" FROM "FieldRecord" WHERE "workspaceId" = ? AND "id" = ?`).pluck()
  const apart = database.prepare(
    `INSERT INTO "QuarantinedRecord" (${list(apartCells)}) VALUES (${placesFor(apartCells)})
     ON CONFLICT ("workspaceId", "id", "hash") DO NOTHING`,
  )
  const note = database.prepare(
    `UPDATE "Device" SET "unsent" = ?, "app" = coalesce(?, "app"), "lastSeenAt" = ? WHERE "workspaceId" = ? AND "id" = ?`,
  )
  const held = database.prepare(`SELECT count(*) FROM "FieldRecord" WHERE "workspaceId" = ? AND "device" = ?`).pluck()
  const undecided = database
    .prepare(
      `SELECT count(*) FROM "QuarantinedRecord" WHERE "workspaceId" = ? AND "device" = ? AND "resolution" IS NULL`,
    )
    .pluck()
  return {
    knowsEvent: (workspaceId, id) => event.get(workspaceId, id) !== undefined,
    add: (cells) => add.run(cells).changes === 1,
    hash: (workspaceId, id) => hash.get(workspaceId, id) as string | undefined,
    keepApart: (cells) => apart.run(cells).changes === 1,
    note: (cells) => {
      note.run(cells)
    },
    counted: (workspaceId, device) => ({
      held: held.get(workspaceId, device) as number,
      apart: undecided.get(workspaceId, device) as number,
    }),
  }
}
