import { join } from 'node:path'
import type { Worker } from 'node:worker_threads'
import { describe, expect, onTestFinished, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import type { Observation, Row, RowAnswer } from '../../src/model/scouting/index.ts'
import { startServer } from '../api/server.ts'
import { inLongForm } from '../browser/longForm.ts'
import { scratchFolder } from '../store/scratch.ts'
import { seen } from './harbourEvent.ts'
import { openEvent, rowsShown } from './openEvent.ts'

const rounds = 60
const phones = 3
/** What a phone sends at once. */
const batches = {
  /** Enough for a thread to keep them, and so short that they are read where they arrive: it is the only thread. */
  commit: { rowsEach: 30, change: { timeline: [] } },
  /** Threads read them, too. */
  'read and commit': { rowsEach: 60, change: {} },
} satisfies { [work: string]: { rowsEach: number; change: Partial<Observation> } }

/** From one thread's end to the next (ms): at another moment of the work each time. */
const delay = (round: number) => (37 * round) % 90

// Node ends a thread at any point of native code, which once in many hundred takes the whole process, and with it the run of all tests.
describe.runIf(inLongForm)(
  `threads that are ended ${rounds} times leave nobody without an answer, and every row that was acknowledged is there:`,
  () => {
    test.each(Object.entries(batches))(
      'while they %s',
      async (_, { rowsEach, change }) => {
        const threads = new Set<Worker>()
        const note = (thread: Worker) => {
          threads.add(thread)
          thread.once('exit', () => threads.delete(thread))
        }
        process.on('worker', note)
        onTestFinished(() => {
          process.off('worker', note)
        })
        const server = await startServer({ file: join(scratchFolder(), 'event.db') })
        await openEvent(server.url)

        let working = true
        const acknowledged: Row[] = []
        const statuses = new Set<number>()
        const phone = async (device: number) => {
          for (let batch = 0; working; batch++) {
            const rows = Array.from({ length: rowsEach }, (_, index) => seen(device, batch * rowsEach + index, change))
            const sent = { device: `phone-${device}`, unsent: 0, rows }
            const { status, body } = await server.send('POST', '/api/records', sent)
            statuses.add(status)
            const answers = body.answers as RowAnswer[]
            acknowledged.push(...rows.filter((_, index) => answers[index]?.outcome === 'held'))
            expect(answers.filter(({ outcome }) => outcome === 'held')).toHaveLength(rowsEach)
          }
        }
        const going = Promise.all(Array.from({ length: phones }, (_, index) => phone(index + 1)))
        let ended = 0
        for (let round = 0; round < rounds; round++) {
          await new Promise((resolve) => setTimeout(resolve, delay(round)))
          await expect.poll(() => threads.size, { interval: 1 }).toBeGreaterThan(0)
          const chosen = [...threads][round % threads.size]!
          await chosen.terminate()
          ended += 1
        }
        working = false
        // Each phone's last request too.
        await going
        expect(ended).toBe(rounds)
        expect([...statuses]).toEqual([200])
        expect(acknowledged.length).toBeGreaterThan(rounds * 10)
        const kept = await rowsShown(server.url)
        expect(kept.size).toBe(acknowledged.length)
        for (const row of acknowledged) expect(hashed(kept.get(row.id)!).hash).toBe(hashed(row).hash)
        await server.close()
      },
      300_000,
    )
  },
)
