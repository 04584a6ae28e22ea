import { randomUUID } from 'node:crypto'
import fastify, { type FastifyInstance } from 'fastify'
import packageDescription from '../package.json' with { type: 'json' }
import { openPool, type PoolOptions } from './api/compute/pool.ts'
import { offerContext } from './api/http/context.ts'
import { offerEndpoints } from './api/http/endpoints.ts'
import { answerErrors, answerUnreadableAddress } from './api/http/errors.ts'
import { protect } from './api/http/helmet.ts'
import { bodyLimit, readJson } from './api/http/json.ts'
import { offerMetrics } from './api/http/metrics.ts'
import { nameRequests } from './api/http/names.ts'
import { openApiDocument } from './api/http/openapi.ts'
import { limitGuesses } from './api/http/rate.ts'
import { reachOf } from './api/http/reach.ts'
import { refuseOtherSites } from './api/http/sameSite.ts'
import { offerTrpc } from './api/http/trpc.ts'
import { serveWeb } from './api/http/web.ts'
import { offerJobEvents, type StreamOptions } from './api/jobs/events.ts'
import { JobsPerWorkspace } from './api/jobs/perWorkspace.ts'
import { offerLive } from './api/records/live.ts'
import type { JobLimits } from './jobs/index.ts'
import { LiveBySignals } from './live/index.ts'
import { onlyWorkspace } from './store/index.ts'
import type { Store } from './store/types.ts'

export interface AppOptions {
  store: Store
  /** Folder of the built web; none in tests of the API. */
  webRoot?: string
  logLevel?: string
  /** Certificate and key, for https. */
  https?: { cert: Buffer; key: Buffer }
  pool?: PoolOptions
  /** Jobs at once, and how their events are sent; for tests. */
  jobs?: JobLimits
  jobEvents?: StreamOptions
  live?: StreamOptions
  /** Requests about guesses from one address in a minute, for tests. */
  mostGuessRequests?: number
  /** Requests of one signed-in device in a minute, for tests. */
  mostRequests?: number
  /** Addresses of proxies that are believed about whom they forward. */
  trustProxy?: string[]
  /** The clock by which attempts to sign in are limited (ms); for tests. */
  now?: () => number
  /** Who brings it may read metrics from elsewhere. */
  metricsToken?: string | null
  /** Where the log goes; the standard output unless a test reads it. */
  logTo?: { write(line: string): void }
  /** Told when the server gets its first lead. */
  claimed?: () => void
}

export { onlyWorkspace }

/** The whole server but for listening: the same in production and in tests. Closing it ends its threads, not its store. */
export async function buildApp({
  store,
  webRoot,
  logLevel = 'silent',
  https,
  pool: size,
  jobs: limits = { running: 2, waiting: 8 },
  jobEvents,
  live,
  mostGuessRequests,
  mostRequests,
  trustProxy,
  metricsToken,
  logTo,
  claimed,
  now,
}: AppOptions) {
  const options = {
    bodyLimit,
    logger: { level: logLevel, ...(logTo && { stream: logTo }) },
    // One no other request has, on this or another process, so that a line of the log is found from what somebody tells of.
    genReqId: () => randomUUID(),
    routerOptions: { maxParamLength: 300 },
    // A machine that is stopped for a while in the middle of a start goes on with it.
    pluginTimeout: 120_000,
    ...(trustProxy && { trustProxy }),
    frameworkErrors: answerUnreadableAddress,
  }
  const app = (https ? fastify({ ...options, https }) : fastify(options)) as unknown as FastifyInstance
  const { version } = packageDescription
  const workspaceId = await store.ensureWorkspace(onlyWorkspace)
  const pool = openPool(size)
  const log = (error: unknown) => app.log.error(error)
  const jobs = await JobsPerWorkspace.open({ store, pool, limits, log })
  await jobs.get(workspaceId)
  app.addHook('preClose', () => jobs.close())
  app.addHook('onClose', () => pool.close())

  answerErrors(app)
  nameRequests(app)
  offerMetrics(app, { store, token: metricsToken ?? null, now })
  await protect(app)
  const contextOf = await offerContext(app, {
    store,
    workspaceId,
    jobsOf: (id) => jobs.get(id),
    pool,
    live: new LiveBySignals(store.signals, log),
    version,
    reach: () => reachOf(app, https !== undefined),
    ...{ now, mostRequests, claimed },
  })
  await limitGuesses(app, mostGuessRequests)
  refuseOtherSites(app)
  readJson(app)
  offerEndpoints(app, contextOf)
  let description: ReturnType<typeof openApiDocument> | undefined
  app.get('/api/openapi.json', async () => {
    // Not before it is asked for: it takes longer than all the rest of a start.
    description ??= openApiDocument(version)
    return description
  })
  offerJobEvents(app, contextOf, jobEvents)
  offerLive(app, contextOf, live)
  await offerTrpc(app, contextOf)
  await serveWeb(app, webRoot)
  return app
}
