import { existsSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { opensHere, restoreBackup } from '../../../src/store/backups/index.ts'
import { makeBackup } from '../../../src/store/backups/make.ts'
import { proveBackup } from '../../../src/store/backups/prove.ts'
import { openStore, StoreError } from '../../../src/store/index.ts'
import { scratchFolder, scratchStore } from '../scratch.ts'

const now = () => new Date('2026-01-10T09:00:00Z')
const game = (id: string) => ({ kind: 'game' as const, id, name: id, body: { points: 3 }, base: null })

/** Changes a copy behind its manifest's back. */
function change(path: string, sql: string): void {
  const database = new Database(path)
  database.exec(sql)
  database.close()
}

test('a copy is of one moment, though rows are written while it is made, and a drill finds all of it', async () => {
  const { store, file } = await scratchStore({ now })
  const team = store.workspace(await store.ensureWorkspace('team'))
  for (let k = 0; k < 50; k++) await team.save(game(`before-${k}`))
  let writing = true
  let written = 0
  const writes = (async () => {
    while (writing) {
      await team.save(game(`meanwhile-${written++}`))
      // As between requests: the thread's answer comes in between.
      await new Promise(setImmediate)
    }
  })()
  const copy = await store.backups!.make('button')
  expect(written).toBeGreaterThan(0)
  const proven = await store.backups!.prove(copy.name)
  writing = false
  await writes
  expect(proven?.proof).toMatchObject({ faults: [] })
  expect(copy.manifest?.tables.find(({ table }) => table === 'Document')?.rows).toBeGreaterThanOrEqual(50)
  expect(proven?.proof?.rows).toBe(copy.manifest?.tables.reduce((sum, { rows }) => sum + rows, 0))
  expect((await store.backups!.list()).map(({ name }) => name)).toEqual([copy.name])
  // Nobody else on the machine reads what a workspace holds.
  const path = join(store.backups!.folder, copy.name)
  expect(statSync(path).mode & 0o077).toBe(0)
  expect(file).not.toBe(path)
})

test('a drill says what is missing, what was changed and what is damaged, and leaves the copy as it is', async () => {
  const { store, file } = await scratchStore({ now })
  const team = store.workspace(await store.ensureWorkspace('team'))
  await team.save(game('buoy'))
  await team.save(game('mole'))
  const { name } = await store.backups!.make('button')
  const path = join(store.backups!.folder, name)
  const prove = async () => (await proveBackup(path, { opens: opensHere, now })).proof?.faults
  expect(await prove()).toEqual([])
  const whole = readFileSync(path)

  change(path, `UPDATE "Document" SET name = 'other' WHERE id = 'mole'`)
  expect(await prove()).toEqual(['Document holds other values'])
  change(path, `PRAGMA foreign_keys = OFF; DELETE FROM "Document" WHERE id = 'mole'`)
  expect(await prove()).toEqual(['Revision names rows that are not there', 'Document has 1 rows instead of 2'])
  writeFileSync(path, whole.subarray(0, whole.length - 4096))
  expect((await prove())?.join()).toMatch(/malformed|damaged|Page|page/)
  writeFileSync(path, 'nothing of the kind')
  expect((await prove())?.join()).toMatch(/not a database/)
  expect(await store.backups!.prove('../team.db')).toBeNull()
  expect(existsSync(file)).toBe(true)
})

test('restoring waits until nobody uses the database, keeps what was there, and brings back what was copied', async () => {
  const folder = scratchFolder()
  const file = join(folder, 'team.db')
  const store = await openStore(`file:${file}`, { now })
  const team = store.workspace(await store.ensureWorkspace('team'))
  await team.save(game('kept'))
  const copy = await store.backups!.make('button')
  await team.save(game('later'))
  const path = join(store.backups!.folder, copy.name)
  const later = () => new Date('2026-01-11T09:00:00Z')
  const restore = () => restoreBackup(file, { path, opens: opensHere, now: later })
  await expect(restore()).rejects.toThrow(/in use/)
  await store.close()
  const { before } = await restore()

  const again = await openStore(`file:${file}`, { now })
  const list = async () => (await again.workspace(await again.ensureWorkspace('team')).list('game')).map(({ id }) => id)
  expect(await list()).toEqual(['kept'])
  const names = (await again.backups!.list()).map(({ name }) => name)
  expect(names).toContain(before)
  await again.close()

  // What was put away is a copy like the others.
  await restoreBackup(file, { path: join(folder, 'backups', before!), opens: opensHere, now })
  const back = await openStore(`file:${file}`, { now })
  expect((await back.workspace(await back.ensureWorkspace('team')).list('game')).length).toBe(2)
  await back.close()
})

test('a broken copy is not restored, and a broken database is put away as it lies', async () => {
  const folder = scratchFolder()
  const file = join(folder, 'team.db')
  const store = await openStore(`file:${file}`, { now })
  await store.workspace(await store.ensureWorkspace('team')).save(game('kept'))
  const { name } = await store.backups!.make('button')
  await store.close()
  const path = join(folder, 'backups', name)
  const restore = (from: string) => restoreBackup(file, { path: from, opens: opensHere, now })
  await expect(restore(join(folder, 'none.db'))).rejects.toThrow(StoreError)
  // Neither a copy by another name nor the folder itself.
  writeFileSync(join(folder, 'pit.db'), readFileSync(path))
  for (const other of ['pit.db', 'backups'])
    await expect(restore(join(folder, other))).rejects.toThrow(/is not called as copies are/)

  const whole = readFileSync(path)
  change(path, `UPDATE "Document" SET name = 'other'`)
  await expect(restore(path)).rejects.toThrow(/Document holds other values/)
  writeFileSync(path, whole)

  writeFileSync(file, 'torn by a power cut')
  const { before } = await restore(path)
  expect(before).toMatch(/^damaged /)
  expect(readFileSync(join(folder, 'backups', before!), 'utf8')).toBe('torn by a power cut')
  await openStore(`file:${file}`, { now }).then((opened) => opened.close())
})

test('a copy that can not be made leaves nothing that looks like one', async () => {
  const folder = scratchFolder()
  const file = join(folder, 'team.db')
  writeFileSync(file, 'no database at all')
  await expect(makeBackup(file, { reason: 'command', at: now() })).rejects.toThrow()
  const { FileBackups } = await import('../../../src/store/backups/index.ts')
  expect(await new FileBackups(file, now).list()).toEqual([])
})

test('what a copy that was never finished has left is cleared away, but nothing that may be in the making', async () => {
  const { store } = await scratchStore({ now })
  await store.ensureWorkspace('team')
  const { folder } = store.backups!
  const part = (at: string) => join(folder, `team ${at}.db.part`)
  const [old, fresh] = [part('2026-01-09T09.00.00.000Z'), part('2026-01-10T08.59.00.000Z')]
  const foreign = join(folder, 'other 2026-01-09T09.00.00.000Z.db.part')
  for (const path of [old, fresh, foreign]) writeFileSync(path, 'half')
  const hoursAgo = Date.now() / 1000 - 2 * 3600
  for (const path of [old, foreign]) utimesSync(path, hoursAgo, hoursAgo)
  await store.backups!.make('button')
  expect([old, fresh, foreign].map((path) => existsSync(path))).toEqual([false, true, true])
})
