import fastify, { type FastifyInstance, type FastifyReply } from 'fastify'
import packageDescription from '../package.json' with { type: 'json' }
import { openPool, type PoolOptions } from './api/compute/pool.ts'
import { failureOf, jobFailureOf } from './api/errors.ts'
import { offerEndpoints } from './api/http/endpoints.ts'
import { answerErrors } from './api/http/errors.ts'
import { protect } from './api/http/helmet.ts'
import { bodyLimit, readJson } from './api/http/json.ts'
import { openApiDocument } from './api/http/openapi.ts'
import { limitGuesses } from './api/http/rate.ts'
import { reachOf } from './api/http/reach.ts'
import { refuseOtherSites } from './api/http/sameSite.ts'
import { offerTrpc } from './api/http/trpc.ts'
import { serveWeb } from './api/http/web.ts'
import { offerJobEvents, type StreamOptions } from './api/jobs/events.ts'
import { worksOf } from './api/jobs/works.ts'
import type { Context } from './api/trpc.ts'
import { whoeverSitsHere } from './api/who.ts'
import { InProcessJobs, type JobLimits } from './jobs/index.ts'
import { InProcessLive } from './live/index.ts'
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
  /** Requests about guesses from one address in a minute, for tests. */
  mostGuessRequests?: number
}

/** Name of the workspace that everything belongs to while there are no people yet. */
export const onlyWorkspace = 'default'

function aborted(reply: FastifyReply): AbortSignal {
  const controller = new AbortController()
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort()
  })
  return controller.signal
}

/** The whole server but for listening: the same in production and in tests. Closing it ends its threads, not its store. */
export async function buildApp({
  store,
  webRoot,
  logLevel = 'silent',
  https,
  pool: size,
  jobs: limits = { running: 2, waiting: 8 },
  jobEvents,
  mostGuessRequests,
}: AppOptions) {
  const options = { bodyLimit, logger: { level: logLevel }, routerOptions: { maxParamLength: 300 } }
  const app = (https ? fastify({ ...options, https }) : fastify(options)) as unknown as FastifyInstance
  const { version } = packageDescription
  const workspaceId = await store.ensureWorkspace(onlyWorkspace)
  const workspace = store.workspace(workspaceId)
  const pool = openPool(size)
  const jobs = new InProcessJobs({
    store: workspace.jobs,
    works: worksOf(pool),
    limits,
    explain: (error) => {
      const failure = failureOf(error)
      if (failure.code === 'internal') app.log.error(error)
      return jobFailureOf(failure)
    },
  })
  await jobs.recover()
  const live = new InProcessLive()
  app.addHook('preClose', () => jobs.close())
  app.addHook('onClose', () => pool.close())
  const reach = () => reachOf(app, https !== undefined)
  const contextOf = (reply: FastifyReply): Context => ({
    store,
    workspace,
    pool,
    jobs,
    who: whoeverSitsHere,
    tell: (news) => live.publish(workspaceId, news),
    version,
    reach,
    signal: aborted(reply),
  })

  answerErrors(app)
  await protect(app)
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
  offerJobEvents(app, jobs, jobEvents)
  await offerTrpc(app, contextOf)
  await serveWeb(app, webRoot)
  return app
}
