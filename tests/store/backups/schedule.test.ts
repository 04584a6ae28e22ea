import { truncateSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { dispensable } from '../../../src/store/backups/keep.ts'
import { due, scheduleBackups } from '../../../src/store/backups/schedule.ts'
import type { Backup, BackupReason } from '../../../src/store/types.ts'
import { scratchStore } from '../scratch.ts'

const start = Date.parse('2026-03-01T00:00:00Z')
const hour = 3_600_000

function copy(at: number, reason: BackupReason, proven?: 'whole' | 'broken'): Backup {
  const madeAt = new Date(at).toISOString()
  const proof = proven && { provenAt: madeAt, faults: proven === 'whole' ? [] : ['gone'], rows: 1, milliseconds: 1 }
  return {
    name: `team ${madeAt}.db`,
    madeAt,
    bytes: 1,
    manifest: { version: 1, reason, madeAt, bytes: 1, tables: [] },
    proof: proof ?? null,
  }
}

/** A copy an hour for so many days, newest first. */
const season = (days: number) =>
  Array.from({ length: days * 24 }, (_, k) => copy(start + k * hour, 'schedule')).reverse()

describe('Of copies that were made by the hour', () => {
  test('a season leaves the last day whole, two weeks by day and ten weeks by week', () => {
    const all = season(100)
    const gone = new Set(dispensable(all))
    const kept = all.filter(({ name }) => !gone.has(name)).map(({ madeAt }) => madeAt)
    expect(kept.slice(0, 24)).toEqual(all.slice(0, 24).map(({ madeAt }) => madeAt))
    const day = 24 * hour
    const last = start + 100 * day - hour
    // 13 more days, each by its last copy; then weeks, of which two lie within the fortnight.
    expect(kept.filter((at) => Date.parse(at) > last - 14 * day).length).toBe(24 + 13)
    expect(kept.length).toBeGreaterThanOrEqual(24 + 13 + 7)
    expect(kept.length).toBeLessThanOrEqual(24 + 13 + 9)
    expect(Date.parse(kept.at(-1)!)).toBeLessThan(last - 55 * day)
  })

  test('those that somebody asked for, and the newest that was proven, stay beside them', () => {
    const proven = { ...copy(start, 'schedule', 'whole') }
    const broken = copy(start + hour, 'schedule', 'broken')
    const asked = Array.from({ length: 12 }, (_, k) => copy(start - (k + 1) * hour, 'button'))
    const strange = { ...copy(start - 99 * hour, 'button'), manifest: null }
    const all = [
      ...season(90).filter(({ madeAt }) => Date.parse(madeAt) > start + hour),
      broken,
      proven,
      ...asked,
      strange,
    ]
    const gone = dispensable(all)
    expect(gone).not.toContain(proven.name)
    expect(gone).toContain(broken.name)
    expect(gone).not.toContain(strange.name)
    expect(asked.filter(({ name }) => gone.includes(name)).length).toBe(2)
  })
})

test('a copy is due after its hours, a proof once a day', () => {
  const all = [copy(start, 'schedule', 'whole')]
  const at = (hours: number) => due(all, { every: 2, now: new Date(start + hours * hour) })
  expect(due([], { every: 2, now: new Date(start) })).toEqual({ copy: true, proof: true })
  expect(at(1)).toEqual({ copy: false, proof: false })
  expect(at(2)).toEqual({ copy: true, proof: false })
  expect(at(24)).toEqual({ copy: true, proof: true })
})

test('by itself it copies once, proves, says what is not whole, and ends with what it has begun', async () => {
  const { store } = await scratchStore()
  const told: string[] = []
  const begin = (of: { every: number; now?: () => Date }) =>
    scheduleBackups(store.backups, { look: 5, failed: (error) => told.push(String(error)), ...of })
  const end = begin({ every: 1 })
  await expect.poll(async () => (await store.backups!.list())[0]?.proof?.faults, { timeout: 30_000 }).toEqual([])
  await end()
  const [only, ...others] = await store.backups!.list()
  expect(only?.manifest?.reason).toBe('schedule')
  expect([others, told]).toEqual([[], []])

  // A day later no copy is due, the newest is proven again, and by then its file has become shorter.
  const path = join(store.backups!.folder, only!.name)
  truncateSync(path, 8192)
  const endAgain = begin({ every: 999, now: () => new Date(Date.now() + 25 * hour) })
  await expect.poll(() => told.join(), { timeout: 30_000 }).toMatch(/is not whole: /)
  await endAgain()
})
