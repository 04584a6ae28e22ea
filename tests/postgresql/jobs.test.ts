import { afterAll, beforeAll, expect, test } from 'vitest'
import { eventsOf, type Sent } from '../api/events.ts'
import { type Server, startServer } from '../api/server.ts'
import { inLongForm } from '../browser/longForm.ts'
import { postgresqlDatabase, type TestDatabase } from '../engines.ts'
import { type ServerProcess, startProcess } from '../faults/process.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'

let database: TestDatabase

beforeAll(async () => {
  database = await postgresqlDatabase()
})
afterAll(() => database.remove())

const three = [ternBest(), ternBest(), ternBest()]
const match = (replicates: number) => ({
  ...{ game: harbour(), level: 'local', ours: three, theirs: three, seed: 9 },
  replicates,
})

const json = { 'content-type': 'application/json' }

async function started(url: string, replicates: number): Promise<string> {
  const body = JSON.stringify({ kind: 'match', request: match(replicates) })
  return (await (await fetch(`${url}/api/jobs`, { method: 'POST', headers: json, body })).json()).id
}

/** What is told of a job until its end; `at` is called with each. */
async function followed(url: string, id: string, at: (sent: Sent) => void = () => {}): Promise<Sent[]> {
  const heard: Sent[] = []
  for await (const sent of eventsOf(await fetch(`${url}/api/jobs/${id}/events`))) {
    heard.push(sent)
    at(sent)
  }
  return heard
}

const kinds = (heard: readonly Sent[]) => heard.flatMap(({ id, event }) => (id === undefined ? [] : [event]))

test.runIf(inLongForm)(
  'A job whose process is killed is begun anew by another, who tells of it as if nothing had been',
  async () => {
    const victim: ServerProcess = await startProcess(database.url)
    let other: Server | undefined
    try {
      // Enough for the first to be killed at it, whichever moment it begins at.
      const id = await started(victim.url, 20_000)
      await expect.poll(async () => (await (await fetch(`${victim.url}/api/jobs/${id}`)).json()).state).toBe('running')
      await victim.kill()
      other = await startServer({ on: database, pool: { threads: 2 } })
      expect((await other.get(`/api/jobs/${id}`)).body).toMatchObject({ state: 'running', result: null })
      const heard = await followed(other.url, id)
      expect(kinds(heard)).toEqual(['asked', 'started', 'started', 'ended'])
      const { body } = await other.get(`/api/jobs/${id}`)
      expect(body).toMatchObject({ state: 'done', failure: null })
      expect(body.result.replicates).toBe(20_000)
    } finally {
      await victim.kill()
      await other?.close()
    }
  },
)

test('Jobs are heard of, cancelled and left to each other by servers side by side; one that stops interrupts none', async () => {
  const here = await startServer({ on: database, pool: { threads: 1 } })
  let there: Server | undefined
  try {
    const kept = await started(here.url, 5_000)
    const cancelled = await started(here.url, 1_000_000)
    const running = async (server: Server, id: string) => (await server.get(`/api/jobs/${id}`)).body.state
    await expect.poll(() => running(here, cancelled), { interval: 20 }).toBe('running')
    there = await startServer({ on: database, pool: { threads: 1 } })
    // Heard at the other one: how far it is, and its end, which reaches the process that computes.
    let cancelling: Promise<unknown> | undefined
    const heard = await followed(there.url, cancelled, ({ event }) => {
      if (event === 'progress') cancelling ??= there!.send('POST', `/api/jobs/${cancelled}/cancel`, {})
    })
    await cancelling
    expect(kinds(heard)).toEqual(['asked', 'started', 'ended'])
    expect(heard.at(-1)!.data.job.state).toBe('cancelled')
    const last = await started(here.url, 5_000)
    await here.app.close()
    for (const id of [kept, last]) {
      expect(kinds(await followed(there.url, id)).at(-1)).toBe('ended')
      expect(await running(there, id)).toBe('done')
    }
    const alone = await there.send('POST', '/api/compute/match', match(5_000))
    expect((await there.get(`/api/jobs/${last}`)).body.result).toEqual(alone.body)
  } finally {
    await here.close()
    await there?.close()
  }
})
