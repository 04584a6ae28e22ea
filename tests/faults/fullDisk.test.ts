import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { startServer } from '../api/server.ts'
import { seen } from '../field/harbourEvent.ts'
import { openEvent } from '../field/openEvent.ts'

test('A full disk is said, nothing is acknowledged by it, and what was acknowledged before is there', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'full-'))
  const file = join(folder, 'event.db')
  const before = await startServer({ file })
  await openEvent(before.url)
  const first = { device: 'phone-1', unsent: 0, rows: [seen(1, 1)] }
  expect((await before.send('POST', '/api/records', first)).body.answers[0].outcome).toBe('held')
  await before.close()

  // No page more than the file has now.
  const full = await startServer({ file, further: 'PRAGMA max_page_count = 1;' })
  const rows = Array.from({ length: 200 }, (_, index) => seen(2, index))
  const answer = await full.send('POST', '/api/records', { device: 'phone-2', unsent: 0, rows })
  expect(answer.status, JSON.stringify(answer.body)).toBe(503)
  expect(answer.body.error.code).toBe('storageFull')
  expect(answer.headers.get('retry-after')).toBe('60')
  expect(answer.body).not.toHaveProperty('answers')
  // Still in working order: what needs no room is answered.
  expect((await full.send('POST', '/api/records', first)).body.answers[0]).toMatchObject({
    outcome: 'held',
    again: true,
  })
  expect((await full.get('/api/records?event=open-water')).body.records).toHaveLength(1)
  await full.close()

  const after = await startServer({ file })
  expect((await after.send('POST', '/api/records', { device: 'phone-2', unsent: 0, rows })).body.receipt.held).toBe(200)
  await after.close()
  await rm(folder, { recursive: true, force: true })
})
