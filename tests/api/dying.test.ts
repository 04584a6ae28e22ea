import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { simulate } from '../../src/model/match/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { eventsOf, type Sent } from './events.ts'
import { type Server, startServer } from './server.ts'

/** Threads that end themselves in the middle of a part, as often as they are told. */
const worker = fileURLToPath(new URL('./dying.fromSources.js', import.meta.url))

const three = [ternBest(), ternBest(), ternBest()]
const match = { game: harbour(), level: 'local', ours: three, theirs: three, replicates: 5_500, seed: 9 }

let server: Server
let folder: string

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'dying-'))
  process.env['DYING_THREADS'] = folder
})

afterEach(async () => {
  await server.close()
  rmSync(folder, { recursive: true })
  delete process.env['DYING_THREADS']
  delete process.env['DYING_TIMES']
})

/** The job's events, and its state at the end, with threads that die so often. */
async function played(deaths: number): Promise<{ heard: Sent[]; id: string }> {
  process.env['DYING_TIMES'] = String(deaths)
  server = await startServer({ pool: { threads: 1, worker } })
  const { body } = await server.send('POST', '/api/jobs', { kind: 'match', request: match })
  const heard: Sent[] = []
  for await (const sent of eventsOf(await fetch(`${server.url}/api/jobs/${body.id}/events`)))
    if (sent.id !== undefined) heard.push(sent)
  expect(readdirSync(folder)).toHaveLength(deaths)
  return { heard, id: body.id }
}

test('A thread that dies over a job is replaced, the job says so, and its answer is the same to the last bit', async () => {
  const { heard, id } = await played(1)
  expect(heard.map(({ event }) => event)).toEqual(['asked', 'started', 'threadReplaced', 'ended'])
  expect(heard.at(-1)!.data.job).toMatchObject({ state: 'done', replaced: 1 })
  const { body } = await server.get(`/api/jobs/${id}`)
  const { warnings, ...report } = body.result
  expect(report).toEqual(JSON.parse(JSON.stringify(simulate(match))))
  expect(warnings).toHaveLength(6)
})

test.runIf(inLongForm)(
  'Where its replacement dies over the same part, the job fails in words, and the server works on',
  async () => {
    const { heard, id } = await played(2)
    const { job } = heard.at(-1)!.data
    expect(job).toMatchObject({ state: 'failed', replaced: 1, failure: { code: 'internal' } })
    expect(job.failure.message).toContain('ended the thread that worked at it')
    expect((await server.get(`/api/jobs/${id}`)).body.result).toBe(null)
    const again = await server.send('POST', '/api/compute/match', { ...match, replicates: 500 })
    expect(again.status).toBe(200)
  },
)
