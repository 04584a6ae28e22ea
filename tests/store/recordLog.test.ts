import { expect, onTestFinished, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import { cellsOf, type Row } from '../../src/model/scouting/index.ts'
import type { PrismaClient } from '../../src/store/generated/client.ts'
import { openPostgresql } from '../../src/store/postgresql/database.ts'
import { RecordLogs } from '../../src/store/records/log.ts'
import { openSqlite } from '../../src/store/sqlite/database.ts'
import type { WorkspaceStore } from '../../src/store/types.ts'
import { seen, uuidOf } from '../faults/harbourEvent.ts'
import { scratchWorkspace } from './scratch.ts'

const now = () => new Date()

/** A workspace on a real database, and a way into it that notes how many rows come out. */
async function watchedWorkspace() {
  const { store, database, team } = await scratchWorkspace()
  const open =
    database.file === ''
      ? openPostgresql(database.url, { now })
      : openSqlite(database.file, { further: undefined, now })
  const { client, close } = await open
  onTestFinished(close)
  const read: number[] = []
  const watched = {
    $queryRaw: (async (...of: Parameters<PrismaClient['$queryRaw']>) => {
      const rows = await client.$queryRaw<unknown[]>(...of)
      read.push(rows.length)
      return rows
    }) as PrismaClient['$queryRaw'],
  }
  const [own, other] = [await store.ensureWorkspace('team'), await store.ensureWorkspace('other')]
  return { team, watched, read, own, other }
}

async function add(team: WorkspaceStore, event: string, ...rows: Row[]): Promise<void> {
  const own = rows.map((row) => cellsOf(hashed({ ...row, event } as Row)))
  await team.save({ kind: 'event', id: event, name: event, body: {}, base: null })
  await team.records.accept({ device: 'phone-1', person: null, session: null, unsent: 0, rows: own })
}

const photo = (device: number, sequence: number): Row => {
  const { body: _, kind: _kind, ...way } = seen(device, sequence)
  return { ...way, kind: 'photo', body: { id: uuidOf(device, sequence), type: 'image/png', data: 'AAAA' } }
}

test('Of an event only what is new is read, photos are counted and not kept, and two who ask at once add nothing twice', async () => {
  const { team, watched, read, own, other } = await watchedWorkspace()
  const logs = new RecordLogs()
  await add(team, 'a', seen(1, 1), photo(1, 2))
  const [first, second] = await Promise.all([logs.of(watched, own, 'a'), logs.of(watched, own, 'a')])
  expect([first.records.length, first.held.get('phone-1')]).toEqual([1, 2])
  expect(second.records).toEqual(first.records)
  expect(first.records[0]).toEqual((await team.records.get([uuidOf(1, 1)]))[0])
  await add(team, 'a', seen(1, 3))
  const third = await logs.of(watched, own, 'a')
  expect(third.records.map(({ row }) => row.id)).toEqual([uuidOf(1, 1), uuidOf(1, 3)])
  expect([third.of === first.of, third.newest > first.newest, first.records.length]).toEqual([true, true, 1])
  expect(read).toEqual([2, 0, 1])
  // Another workspace has an event of the same name.
  const theirs = await logs.of(watched, other, 'a')
  expect([theirs.of === first.of, theirs.newest, theirs.records]).toEqual([false, 0, []])
})

test('Events beyond what is kept are read anew, the one that was asked for longest ago first', async () => {
  const { team, watched, read, own } = await watchedWorkspace()
  for (const [index, event] of ['b', 'c', 'd'].entries()) await add(team, event, seen(2, index))
  const logs = new RecordLogs(hashed(seen(2, 0)).text.length * 2 + 100)
  for (const event of ['b', 'c', 'b', 'd', 'b', 'c']) await logs.of(watched, own, event)
  expect(read).toEqual([1, 1, 0, 1, 0, 1])
})
