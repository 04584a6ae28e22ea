import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, onTestFinished, test } from 'vitest'
import { event as demo } from '../../seed/event/index.ts'
import { hashed } from '../../src/api/records/rows.ts'
import type { Row, RowAnswer } from '../../src/model/scouting/index.ts'
import { projectRoot } from '../../src/root.ts'
import { inLongForm } from '../browser/longForm.ts'
import { postgresqlDatabase, sqliteDatabase } from '../engines.ts'
import { scratchFolder } from '../store/scratch.ts'
import { seen } from './harbourEvent.ts'
import { openEvent, rowsShown } from './openEvent.ts'
import { startProcess } from './process.ts'

const rounds = Number(process.env['ROUNDS'] ?? 100)
const phones = 3
/** Enough for threads to read and to keep them. */
const rowsEach = 60

describe.runIf(inLongForm)(`a server whose threads are ended ${rounds} times in the middle of their work`, () => {
  test.each([
    ['a file', sqliteDatabase],
    ['PostgreSQL', postgresqlDatabase],
  ])(
    'lives, answers everybody, and has every row that it acknowledged, on %s',
    async (_, open) => {
      const database = await open()
      onTestFinished(() => database.remove())
      const ended = join(scratchFolder(), 'ended')
      writeFileSync(ended, '')
      const script = pathToFileURL(join(projectRoot(), 'tests/faults/endThreads.js')).href
      const further = { DEMO: '1', BACKUP_HOURS: '0', ENDED: ended, NODE_OPTIONS: `--import ${script}` }
      const server = await startProcess(database.url, 0, further)
      onTestFinished(() => server.kill())
      await openEvent(server.url)

      let working = true
      const acknowledged: Row[] = []
      const statuses = new Set<number>()
      const phone = async (device: number) => {
        for (let batch = 0; working; batch++) {
          // Short ones are read where they arrive, long ones by a thread.
          const change = device % 2 === 0 ? { timeline: [] } : {}
          const rows = Array.from({ length: rowsEach }, (_, index) => seen(device, batch * rowsEach + index, change))
          const body = JSON.stringify({ device: `phone-${device}`, unsent: 0, rows })
          const headers = { 'content-type': 'application/json' }
          const answer = await fetch(`${server.url}/api/records`, { method: 'POST', headers, body })
          statuses.add(answer.status)
          const { answers } = (await answer.json()) as { answers: RowAnswer[] }
          const held = rows.filter((_, index) => answers[index]?.outcome === 'held')
          expect(held).toHaveLength(rowsEach)
          acknowledged.push(...held)
        }
      }
      /** Somebody computes and asks for files; whose thread was ended twice is told so. */
      const screen = async (what: string) => {
        while (working) {
          const answer = await fetch(`${server.url}/api/events/${demo.id}/${what}`)
          await answer.text()
          // On a slow machine it may also have taken too long.
          expect([200, 422, 500]).toContain(answer.status)
        }
      }
      const going = Promise.all([
        ...Array.from({ length: phones }, (_, index) => phone(index + 1)),
        ...['estimates', 'archive'].map(screen),
      ])
      server.child.kill('SIGUSR2')
      const count = () => readFileSync(ended, 'utf8').split('\n').length - 1
      await expect.poll(count, { interval: 100, timeout: 400_000 }).toBeGreaterThanOrEqual(rounds)
      server.child.kill('SIGUSR2')
      working = false
      // Each phone's last request too.
      await going
      expect([server.child.exitCode, server.child.signalCode]).toEqual([null, null])
      expect([...statuses]).toEqual([200])
      expect(acknowledged.length).toBeGreaterThan(rounds)
      const kept = await rowsShown(server.url)
      expect(kept.size).toBe(acknowledged.length)
      for (const row of acknowledged) expect(hashed(kept.get(row.id)!).hash).toBe(hashed(row).hash)
    },
    500_000,
  )
})
