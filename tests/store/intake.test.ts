import { expect, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import { cellsOf, packRows } from '../../src/model/scouting/index.ts'
import type { Batch, Cells, Store } from '../../src/store/types.ts'
import { event, eventId, seen } from '../faults/harbourEvent.ts'
import { scratchStore } from './scratch.ts'

type OfCells = Batch & { rows: readonly Cells[] }

const batchOf = (device: number, rows = 3): OfCells => ({
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
  const bare = (of: OfCells): OfCells => ({ ...of, rows: of.rows.map((cells) => [...cells.slice(0, -1), null]) })
  expect((await records.accept(bare(batch))).outcomes).toEqual(Array(3).fill({ outcome: 'missing' }))
  expect(await records.list(eventId)).toEqual([])
  await records.accept(batch)
  expect((await records.accept(bare(batch))).outcomes).toEqual(Array(3).fill({ outcome: 'held', again: true }))
  const other = { ...batch, rows: [cellsOf(hashed(seen(1, 0, { note: 'other' })))] }
  expect((await records.accept(bare(other))).outcomes).toEqual([{ outcome: 'missing' }])
})

test('rows are taken as they are when they come packed for threads, few and many', async () => {
  const { records } = await opened()
  for (const [device, count] of [
    [1, 3],
    [2, 60],
  ] as const) {
    const { rows, ...batch } = batchOf(device, count)
    const packed = packRows(rows)
    const bodies = new Uint8Array(new SharedArrayBuffer(Buffer.byteLength(packed.bodies!)))
    bodies.set(Buffer.from(packed.bodies!))
    const handIn = (of: typeof bodies | null) => records.accept({ ...batch, rows: { ...packed, bodies: of } })
    expect((await handIn(null)).outcomes).toEqual(Array(count).fill({ outcome: 'missing' }))
    const first = await handIn(bodies)
    expect(first).toMatchObject({ fresh: [eventId], receipt: { held: count } })
    expect(first.outcomes).toEqual(Array(count).fill({ outcome: 'held', again: false }))
    expect((await handIn(null)).outcomes).toEqual(Array(count).fill({ outcome: 'held', again: true }))
    // One row of other content, and one of an event that is not there, among others that are held.
    const odd = packRows([
      rows[0]!,
      cellsOf(hashed(seen(device, 1, { note: 'other' }))),
      cellsOf(hashed({ ...seen(device, 9), event: 'elsewhere' })),
      ...rows.slice(2),
    ])
    const texts = new Uint8Array(new SharedArrayBuffer(Buffer.byteLength(odd.bodies!)))
    texts.set(Buffer.from(odd.bodies!))
    const { outcomes, apart } = await records.accept({ ...batch, rows: { ...odd, bodies: texts } })
    expect(outcomes.slice(0, 4)).toEqual([
      { outcome: 'held', again: true },
      { outcome: 'apart', reason: 'otherContent' },
      { outcome: 'apart', reason: 'unknownEvent' },
      { outcome: 'held', again: true },
    ])
    expect(apart).toEqual([eventId, 'elsewhere'])
  }
  const kept = await records.list(eventId)
  expect(kept.map(({ row }) => row)).toEqual([
    ...Array.from({ length: 3 }, (_, index) => seen(1, index)),
    ...Array.from({ length: 60 }, (_, index) => seen(2, index)),
  ])
})

test('a batch is not lost between the closing of the store and its answer', async () => {
  const { store, records } = await opened()
  const late = expect(records.accept(batchOf(1))).rejects.toThrow(/closed/)
  await store.close()
  await late
})
