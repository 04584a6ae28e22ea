import type { FastifyInstance } from 'fastify'
import { type AppOptions, buildApp } from '../../src/app.ts'
import { openStore } from '../../src/store/index.ts'
import type { Store } from '../../src/store/types.ts'
import { sqliteDatabase, type TestDatabase, testDatabase } from '../engines.ts'

export interface Answer {
  status: number
  // biome-ignore lint/suspicious/noExplicitAny: what a server answers is what the test looks at
  body: any
  headers: Headers
}

/** The real server on a free port, with a database of its own. */
export interface Server {
  url: string
  app: FastifyInstance
  store: Store
  database: TestDatabase
  get(path: string, headers?: HeadersInit): Promise<Answer>
  send(method: string, path: string, body: unknown, headers?: HeadersInit): Promise<Answer>
  /** Without a body. */
  bare(method: string, path: string, headers?: HeadersInit): Promise<Answer>
  /** A body exactly as given. */
  raw(path: string, body: BodyInit | undefined, headers: HeadersInit): Promise<Answer>
  close(): Promise<void>
}

async function answerOf(response: Response): Promise<Answer> {
  const text = await response.text()
  const isJson = response.headers.get('content-type')?.startsWith('application/json') ?? false
  return { status: response.status, body: isJson ? JSON.parse(text) : text, headers: response.headers }
}

/** @param options `file`, `on`: a database that another server has left or uses, and that is kept at the end; `further`: settings of its connection */
export async function startServer({
  file,
  on,
  now,
  further,
  ...options
}: Omit<AppOptions, 'store' | 'now'> & {
  file?: string
  on?: TestDatabase
  now?: () => Date
  further?: string
} = {}): Promise<Server> {
  const given = file === undefined ? on : sqliteDatabase(file)
  const database = given ?? (await testDatabase())
  const store = await openStore(database.url, { further, ...(now && { now }) })
  const app = await buildApp({ store, ...options, ...(now && { now: () => now().getTime() }) })
  const url = await app.listen({ port: 0, host: '127.0.0.1' })
  const json = { 'content-type': 'application/json' }
  return {
    url,
    app,
    store,
    database,
    get: async (path, headers) => answerOf(await fetch(url + path, { headers })),
    send: async (method, path, body, headers) =>
      answerOf(await fetch(url + path, { method, body: JSON.stringify(body), headers: { ...json, ...headers } })),
    bare: async (method, path, headers) => answerOf(await fetch(url + path, { method, headers })),
    raw: async (path, body, headers) => answerOf(await fetch(url + path, { method: 'POST', body, headers })),
    close: async () => {
      await app.close()
      await store.close()
      if (!given) await database.remove()
    },
  }
}
