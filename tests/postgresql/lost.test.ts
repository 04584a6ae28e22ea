import { connect, createServer, type Server as Listening, type Socket } from 'node:net'
import { expect, onTestFinished, test } from 'vitest'
import { startServer } from '../api/server.ts'
import { claim } from '../api/team.ts'
import { postgresqlDatabase } from '../engines.ts'

/** What stands between a server and its database, and can be taken away and put back at the same address. */
class Line {
  readonly #to: URL
  readonly #sockets = new Set<Socket>()
  #listening: Listening | undefined
  port = 0

  constructor(to: string) {
    this.#to = new URL(to)
  }

  async open(): Promise<void> {
    this.#listening = createServer((near) => {
      const far = connect(Number(this.#to.port), this.#to.hostname)
      for (const [one, other] of [
        [near, far],
        [far, near],
      ] as const) {
        this.#sockets.add(one)
        one.pipe(other)
        one.once('error', () => other.destroy()).once('close', () => other.destroy())
      }
    })
    await new Promise<void>((resolve) => this.#listening!.listen(this.port, '127.0.0.1', resolve))
    this.port = (this.#listening.address() as { port: number }).port
  }

  async cut(): Promise<void> {
    const closed = new Promise((resolve) => this.#listening!.close(resolve))
    for (const socket of this.#sockets) socket.destroy()
    this.#sockets.clear()
    await closed
  }

  get url(): string {
    const url = new URL(this.#to)
    url.port = String(this.port)
    return url.href
  }
}

test('A server whose PostgreSQL is away says that it is not ready, goes on running, and is ready again when it is back', async () => {
  const database = await postgresqlDatabase()
  onTestFinished(database.remove)
  const line = new Line(database.url)
  await line.open()
  onTestFinished(() => line.cut())
  const server = await startServer({ on: { ...database, url: line.url }, pool: { threads: 1 } })
  const ready = async () => (await server.get('/ready')).status
  expect(await ready()).toBe(200)
  await line.cut()
  // Whether it belongs to somebody can not be asked either.
  await expect.poll(ready).toBe(503)
  expect((await server.get('/metrics')).body).toMatch(/^cyclewright_database_up 0$/m)
  await line.open()
  await expect.poll(ready).toBe(200)
  const lead = await claim(server)
  expect((await lead.get('/api/people')).body).toHaveLength(1)
  await line.cut()
  await expect.poll(ready).toBe(503)
  // Whoever asks for something else is told in words, and when to ask again.
  const refused = await lead.get('/api/people')
  expect([refused.status, refused.body.error.code, refused.headers.get('retry-after')]).toEqual([
    503,
    'noDatabase',
    '5',
  ])
  await line.open()
  await expect.poll(async () => (await lead.get('/api/people')).status).toBe(200)
  await server.close()
})
