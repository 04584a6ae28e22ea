import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { eventId } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type ServerProcess, startProcess } from '../faults/process.ts'
import { type Burst, bodiesOf, burst, large, percentile, small, type Taken } from './burst.ts'
import type { BenchEntry } from './entry.ts'

/** What a page of the event asks for while all phones come back: its document and its schedule, one after the other. 95th percentile (ms). */
async function pageDuring(url: string, bodies: readonly string[], observations: number): Promise<number> {
  const times: number[] = []
  let going = true
  const reader = async () => {
    while (going) {
      const begin = performance.now()
      for (const path of [`/api/documents/event/${eventId}`, `/api/events/${eventId}/matches`]) {
        const answer = await fetch(url + path)
        if (!answer.ok) throw new Error(`${path}: ${answer.status}`)
        await answer.text()
      }
      times.push(performance.now() - begin)
      await new Promise((resolve) => setTimeout(resolve, 10))
    }
  }
  const reading = reader()
  await burst(url, bodies, observations)
  going = false
  await reading
  return times.sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1]!
}

type Run = (url: string, bodies: readonly string[], observations: number) => Promise<number>

const of =
  (value: (taken: Taken) => number): Run =>
  async (...asked) =>
    value(await burst(...asked))

async function opened(size: Burst, run: Run) {
  const folder = await mkdtemp(join(tmpdir(), 'cyclewright-sync-'))
  const server: ServerProcess = await startProcess(join(folder, 'event.db'))
  const close = async () => {
    await server.kill()
    await rm(folder, { recursive: true, force: true })
  }
  try {
    await openEvent(server.url)
    await burst(server.url, bodiesOf(small), small.observations)
  } catch (error) {
    await close()
    throw error
  }
  return { run: () => run(server.url, bodiesOf(size), size.observations), close }
}

const p99 = ({ each }: Taken): number => percentile(each, 99)

/** What the server takes in when all phones come back at once. Client and server share this machine. */
const entries: BenchEntry[] = [
  {
    name: 'sync.200x100',
    unit: 'ms',
    better: 'lower',
    open: () =>
      opened(
        large,
        of(({ all }) => all),
      ),
  },
  { name: 'sync.p99', unit: 'ms', better: 'lower', open: () => opened(large, of(p99)) },
  { name: 'sync.p60x40', unit: 'ms', better: 'lower', open: () => opened(small, of(p99)) },
  { name: 'sync.page', unit: 'ms', better: 'lower', open: () => opened(large, pageDuring) },
]

export default entries
