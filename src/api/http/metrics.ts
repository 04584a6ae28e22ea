import { createHash, timingSafeEqual } from 'node:crypto'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { collectDefaultMetrics, Gauge, Histogram, type OpenMetricsContentType, Registry } from 'prom-client'
import type { Store } from '../../store/types.ts'
import { ApiError } from '../errors.ts'
import { fromElsewhere } from './onlyHere.ts'
import { isLoopback } from './reach.ts'

export interface MetricsOptions {
  store: Store
  /** Who brings it may read from anywhere; null: only this machine may. */
  token: string | null
  now?: (() => number) | undefined
}

const hashed = (text: string) => createHash('sha256').update(text).digest()

/** Compared in a time that says nothing of where they differ. */
const same = (a: string, b: string): boolean => timingSafeEqual(hashed(a), hashed(b))

function mayRead(request: FastifyRequest, token: string | null): boolean {
  if (token === null) return isLoopback(request.ip) && !fromElsewhere(request)
  const { authorization = '' } = request.headers
  return authorization.startsWith('Bearer ') && same(authorization.slice('Bearer '.length), token)
}

/** Waiting for a stand full of phones is counted in tenths of a second, a long computation in tens of them (s). */
const buckets = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30]

/**
 * `GET /metrics` in the OpenMetrics text format: how long requests take by their route, how many are under way, how old the
 * newest copy of the database is, and the process's own. No team's data is among it, and no address holds an id.
 */
export function offerMetrics(app: FastifyInstance, { store, token, now = Date.now }: MetricsOptions): void {
  const register = new Registry<OpenMetricsContentType>()
  register.setContentType(Registry.OPENMETRICS_CONTENT_TYPE)
  const registers = [register]
  const took = new Histogram({
    name: 'cyclewright_request_seconds',
    help: 'From a request to the end of its answer',
    labelNames: ['method', 'route', 'status'],
    buckets,
    registers,
  })
  const underWay = new Gauge({
    name: 'cyclewright_requests_under_way',
    help: 'Requests without an answer yet',
    registers,
  })
  new Gauge({
    name: 'cyclewright_database_up',
    help: '1: the database answers',
    registers,
    collect() {
      return store.answers().then(
        () => this.set(1),
        () => this.set(0),
      )
    },
  })
  new Gauge({
    name: 'cyclewright_backup_age_seconds',
    help: 'Since the newest copy of the database; absent where none is made here',
    registers,
    async collect() {
      const [newest] = (await store.backups?.list().catch(() => [])) ?? []
      if (newest) this.set((now() - Date.parse(newest.madeAt)) / 1000)
      else this.remove()
    },
  })
  app.addHook('onRequest', async (_, reply) => {
    underWay.inc()
    // Comes once, whether the answer ended or whoever asked went away.
    reply.raw.once('close', () => underWay.dec())
  })
  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? 'none'
    took.observe({ method: request.method, route, status: String(reply.statusCode) }, reply.elapsedTime / 1000)
  })
  let withProcess = false
  app.get('/metrics', async (request, reply) => {
    if (!mayRead(request, token)) {
      const message =
        token === null ? 'Metrics are for this machine, unless METRICS_TOKEN is set' : 'Metrics need their token'
      throw new ApiError({ code: 'forbidden', message })
    }
    // Watching the process costs a little, so it begins when somebody asks.
    if (!withProcess) collectDefaultMetrics({ register })
    withProcess = true
    return reply.type(register.contentType).send(await register.metrics())
  })
}
