import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inLongForm } from '../browser/longForm.ts'
import { onPostgresql } from '../engines.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { eventsOf, type Sent } from './events.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer({ pool: { threads: 2 }, jobs: { running: 1, waiting: 1 }, jobEvents: { heartbeat: 40 } })
})

afterAll(() => server.close())

const match = (replicates: number) => {
  const three = [ternBest(), ternBest(), ternBest()]
  return { game: harbour(), level: 'local', ours: three, theirs: three, replicates, seed: 5 }
}

const start = async (kind: string, request: object, name?: string) =>
  (await server.send('POST', '/api/jobs', { kind, name, request })).body

const follow = (id: string, last?: number) =>
  fetch(`${server.url}/api/jobs/${id}/events`, { headers: last === undefined ? {} : { 'Last-Event-ID': String(last) } })

async function followed(id: string, last?: number): Promise<Sent[]> {
  const heard: Sent[] = []
  for await (const sent of eventsOf(await follow(id, last))) heard.push(sent)
  return heard
}

/** Follows a job until it has told that much. */
async function until(id: string, enough: (sent: Sent) => boolean): Promise<Sent> {
  for await (const sent of eventsOf(await follow(id))) if (enough(sent)) return sent
  throw new Error('the job ended before')
}

const named = (heard: readonly Sent[]) => heard.filter(({ id }) => id !== undefined).map(({ id, event }) => [id, event])

describe('A job', () => {
  test('tells how far it is, is told of again to who comes back, and keeps the answer of its own address', async () => {
    const asked = await start('match', match(12_000), 'Before the final')
    expect(asked).toMatchObject({ kind: 'match', name: 'Before the final', done: 0, failure: null, replaced: 0 })
    const heard = await followed(asked.id)
    expect(named(heard)).toEqual([
      [1, 'asked'],
      [2, 'started'],
      [3, 'ended'],
    ])
    expect(heard.at(-1)!.data.job).toMatchObject({ state: 'done', done: 12_000, total: 12_000 })
    const progress = heard.flatMap(({ event, data }) => (event === 'progress' ? [data.done] : []))
    // Between processes it is told five times a second at most, and the whole job may take less.
    expect(progress.length).toBeGreaterThan(onPostgresql() ? 0 : 1)
    expect(progress).toEqual(progress.toSorted((a, b) => a - b))
    // While threads start up and play there is time for many heartbeats of 40 ms.
    expect(heard.some(({ event }) => event === 'comment')).toBe(true)

    expect(named(await followed(asked.id, 1))).toEqual([
      [2, 'started'],
      [3, 'ended'],
    ])
    expect((await follow(asked.id, 3)).status).toBe(204)

    const { body } = await server.get(`/api/jobs/${asked.id}`)
    expect(body.request).toEqual(match(12_000))
    expect(body.result).toEqual((await server.send('POST', '/api/compute/match', match(12_000))).body)
    const listed = (await server.get('/api/jobs')).body
    expect(listed[0]).toMatchObject({ id: asked.id, state: 'done' })
    expect(listed[0]).not.toHaveProperty('result')

    expect((await server.send('DELETE', `/api/jobs/${asked.id}`, {})).body).toEqual({ removed: true })
    expect((await server.get(`/api/jobs/${asked.id}`)).status).toBe(404)
    expect((await follow(asked.id)).status).toBe(404)
  })

  test('waits for its turn, is refused where too many wait, and stops its threads at once when it is cancelled', async () => {
    const { id } = await start('match', match(1_000_000))
    const waiting = await start('match', match(1_000_000))
    const refused = await server.send('POST', '/api/jobs', { kind: 'match', request: match(500) })
    expect(refused.status).toBe(503)
    expect(refused.headers.get('retry-after')).toBe('30')
    expect(refused.body.error).toMatchObject({ code: 'busy', message: expect.stringContaining('cancel one') })
    expect((await server.get(`/api/jobs/${waiting.id}`)).body).toMatchObject({ state: 'waiting', startedAt: null })
    // What is taken away before it is over is cancelled first, so that it never begins.
    expect((await server.send('DELETE', `/api/jobs/${waiting.id}`, {})).status).toBe(200)

    await until(id, ({ event, data }) => event === 'progress' && data.done > 0)
    const before = process.cpuUsage()
    const { status, body } = await server.send('POST', `/api/jobs/${id}/cancel`, {})
    expect(status).toBe(200)
    expect(body).toMatchObject({ state: 'cancelled', total: 1_000_000, failure: null })
    expect(body.done).toBeLessThan(1_000_000)
    await new Promise((resolve) => setTimeout(resolve, 1000))
    const { user, system } = process.cpuUsage(before)
    // A cancelled job may keep its two threads for 200 ms, which is 400 ms of processor time; playing on they would take 2000
    // in this second. The clock on the wall would tell more of other programs on this machine than of the job.
    expect((user + system) / 1000).toBeLessThan(2 * 200)
    // Asked again it stays as it is, and the next job gets its threads.
    expect((await server.send('POST', `/api/jobs/${id}/cancel`, {})).body).toEqual(body)
    const next = await start('match', match(500))
    expect((await followed(next.id)).at(-1)!.data.job.state).toBe('done')
  })

  test('of options or line-ups answers what their own addresses do', async () => {
    const { game, ours, theirs } = match(1)
    const compare = { game, options: [ours[0]], field: { partners: ours.slice(1), opponents: theirs }, level: 'local' }
    const role = ours[0]!.role
    const roles = [[role, { ...role, goals: [] }], [role], [role]]
    const lineup = { game, level: 'local', ours, theirs: [theirs], roles, seed: 1, objective: 'win' }
    const asked: [string, object][] = [['compare', { ...compare, objective: 'win', replicates: 600 }]]
    if (inLongForm) asked.push(['lineup', lineup])
    for (const [kind, request] of asked) {
      const { id } = await start(kind, request)
      const last = (await followed(id)).at(-1)!.data.job
      expect(last.done).toBe(last.total)
      const { result } = (await server.get(`/api/jobs/${id}`)).body
      expect(result).toEqual((await server.send('POST', `/api/compute/${kind}`, request)).body)
    }
  })

  test.runIf(inLongForm)('needs no more memory for ten times as many matches', async () => {
    const memoryOf = async (replicates: number) => {
      const { id } = await start('match', match(replicates))
      expect((await followed(id)).at(-1)!.data.job.state).toBe('done')
      return process.memoryUsage.rss() / 1e6
    }
    await memoryOf(20_000)
    const few = await memoryOf(20_000)
    // 180,000 more matches kept as the hundred numbers of each would be 140 MB.
    expect((await memoryOf(200_000)) - few).toBeLessThan(40)
  })

  test('that can not be computed is refused with the place in it, and what is no job is not found', async () => {
    const request = match(500)
    request.theirs = [ternBest(), { ...ternBest(), start: 'moon' }, ternBest()]
    const { status, body } = await server.send('POST', '/api/jobs', { kind: 'match', request })
    expect(status).toBe(400)
    expect(body.error.path.slice(0, 3)).toEqual(['request', 'theirs', 1])
    const { body: without } = await server.send('POST', '/api/jobs', { kind: 'sail', request: {} })
    expect(without.error.path).toEqual(['kind'])
    const nowhere = '00000000-0000-4000-8000-000000000000'
    for (const path of [nowhere, `${nowhere}/events`, 'x/events'])
      expect((await server.get(`/api/jobs/${path}`)).status, path).toBe(404)
    expect((await server.get(`/api/jobs/${nowhere}/events`, { 'Last-Event-ID': 'x' })).status).toBe(400)
  })
})

// Where processes share their jobs, another one takes them: tests/postgresql/jobs.test.ts.
test.skipIf(onPostgresql())(
  'Jobs outlive their server: what is done is kept, what was under way says that it was interrupted',
  async () => {
    const done = await start('match', match(500))
    await followed(done.id)
    const before = (await server.get(`/api/jobs/${done.id}`)).body
    const running = await start('match', match(1_000_000))
    const stream = follow(running.id).then(async (response) => {
      const heard: Sent[] = []
      for await (const sent of eventsOf(response)) heard.push(sent)
      return heard
    })
    await until(running.id, ({ event }) => event === 'progress')
    // One that a killed process left behind, which wrote nothing at its end.
    const workspace = server.store.workspace(await server.store.ensureWorkspace('default'))
    const killed = await workspace.jobs.add({ kind: 'match', name: null, request: match(500) })
    await workspace.jobs.start(killed.id)
    await server.app.close()
    expect((await stream).at(-1)!.data.job.state).toBe('interrupted')

    const next = await startServer({ on: server.database, pool: { threads: 1 } })
    try {
      expect((await next.get(`/api/jobs/${done.id}`)).body).toEqual(before)
      for (const { id } of [running, killed]) {
        const { body } = await next.get(`/api/jobs/${id}`)
        expect(body).toMatchObject({ state: 'interrupted', result: null, failure: { code: 'interrupted' } })
        expect(body.failure.message).toContain('start it again')
      }
    } finally {
      await next.close()
    }
  },
)
