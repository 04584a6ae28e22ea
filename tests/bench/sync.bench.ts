import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openEvent } from '../faults/openEvent.ts'
import { type ServerProcess, startProcess } from '../faults/process.ts'
import { type Burst, bodiesOf, burst, large, percentile, small, type Taken } from './burst.ts'
import type { BenchEntry } from './entry.ts'

async function opened(size: Burst, value: (taken: Taken) => number) {
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
  return { run: async () => value(await burst(server.url, bodiesOf(size), size.observations)), close }
}

const p99 = ({ each }: Taken): number => percentile(each, 99)

/** What the server takes in when all phones come back at once. Client and server share this machine. */
const entries: BenchEntry[] = [
  { name: 'sync.200x100', unit: 'ms', better: 'lower', open: () => opened(large, ({ all }) => all) },
  { name: 'sync.p99', unit: 'ms', better: 'lower', open: () => opened(large, p99) },
  { name: 'sync.p60x40', unit: 'ms', better: 'lower', open: () => opened(small, p99) },
]

export default entries
