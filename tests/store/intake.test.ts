import { expect, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import { cellsOf } from '../../src/model/scouting/index.ts'
import type { Batch, Store } from '../../src/store/types.ts'
import { event, eventId, seen } from '../faults/harbourEvent.ts'
import { scratchStore } from './scratch.ts'

const batchOf = (device: number, rows = 3): Batch => ({
  device: `phone-${device}`,
  person: null,
  session: null,
  unsent: 0,
  rows: Array.from({ length: rows }, (_, index) => cellsOf(hashed(seen(device, index)))),
})

async function opened(): Promise<{ store: Store; records: ReturnType<Store['workspace']>['records'] }> {
  const { store } = await scratchStore()
  const workspace = store.workspace(await store.ensureWorkspace('team'))
  await workspace.save({ kind: 'event', id: eventId, name: event.name, body: event, base: null })
  return { store, records: workspace.records }
}

test('batches that come in at once are each answered for themselves, in the order of their rows', async () => {
  const { records } = await opened()
  const batches = Array.from({ length: 40 }, (_, device) => batchOf(device, 1 + (device % 5)))
  const all = await Promise.all([...batches, ...batches].map((batch) => records.accept(batch)))
  all.forEach(({ outcomes, receipt }, index) => {
    const { length } = batches[index % 40]!.rows
    expect(outcomes).toEqual(Array(length).fill({ outcome: 'held', again: index >= 40 }))
    expect(receipt.held).toBe(length)
  })
  const kept = await records.list(eventId)
  expect(kept.map(({ row }) => row.id)).toEqual(batches.flatMap(({ rows }) => rows.map(([id]) => id)))
})

test('what is wrong with one batch does not fall on those that were to be committed with it', async () => {
  const { records } = await opened()
  const [first, broken, last] = [batchOf(1), batchOf(2), batchOf(3)]
  const short = { ...broken, rows: [...broken.rows.slice(0, 2), broken.rows[2]!.slice(0, 5)] }
  const [one, two, three] = await Promise.allSettled([first, short, last].map((batch) => records.accept(batch)))
  expect([one!.status, two!.status, three!.status]).toEqual(['fulfilled', 'rejected', 'fulfilled'])
  // Nor is a part of it there.
  const kept = await records.list(eventId)
  expect(kept.map(({ row }) => row.device)).toEqual([...Array(3).fill('phone-1'), ...Array(3).fill('phone-3')])
  expect((await records.accept(broken)).outcomes).toEqual(Array(3).fill({ outcome: 'held', again: false }))
})

test('rows without their body are held only where they are there with the same content', async () => {
  const { records } = await opened()
  const batch = batchOf(1)
  const bare = (of: Batch): Batch => ({ ...of, rows: of.rows.map((cells) => [...cells.slice(0, -1), null]) })
  expect((await records.accept(bare(batch))).outcomes).toEqual(Array(3).fill({ outcome: 'missing' }))
  expect(await records.list(eventId)).toEqual([])
  await records.accept(batch)
  expect((await records.accept(bare(batch))).outcomes).toEqual(Array(3).fill({ outcome: 'held', again: true }))
  const other = { ...batch, rows: [cellsOf(hashed(seen(1, 0, { note: 'other' })))] }
  expect((await records.accept(bare(other))).outcomes).toEqual([{ outcome: 'missing' }])
})

test('a batch is not lost between the closing of the store and its answer', async () => {
  const { store, records } = await opened()
  const late = expect(records.accept(batchOf(1))).rejects.toThrow(/closed/)
  await store.close()
  await late
})
