import { PassThrough } from 'node:stream'
import type { FastifyInstance, FastifyReply } from 'fastify'
import * as z from 'zod'
import type { JobNews } from '../../jobs/index.ts'
import { ApiError, refuse } from '../errors.ts'
import { failureOf } from '../failures.ts'
import type { ContextOf } from '../http/context.ts'
import { answerFailure } from '../http/errors.ts'
import type { OpenContext } from '../trpc.ts'
import { admitted, may } from '../who.ts'
import { jobId } from './contracts.ts'
import { noJob } from './router.ts'

export interface StreamOptions {
  /** So often (ms) a line is sent where nothing else is, so that nobody on the way takes the connection for dead. */
  heartbeat?: number
  /** Streams that are open at once. */
  most?: number
}

/** No two lines of progress come within this (ms). */
const pause = 100

export const eventsPath = '/api/jobs/:id/events'

/**
 * What happens to a job, as server-sent events (WHATWG HTML, section 9.2). Events that are kept have ids, so that who comes
 * back with the last one is told what was missed; progress has none, and comes anew on each connection. The stream ends with
 * the job. Who comes back after that is answered 204, which tells a browser to stay away.
 */
export function offerJobEvents(app: FastifyInstance, contextOf: ContextOf, options: StreamOptions = {}): void {
  const { heartbeat = 15_000, most = 200 } = options
  const open = new Set<PassThrough>()
  // Before the server waits for its connections, which these would keep open.
  app.addHook('preClose', async () => {
    for (const stream of open) stream.end()
  })
  app.get<{ Params: { id: string } }>(eventsPath, async (request, reply) => {
    try {
      const context = await contextOf(reply)
      admitted(context.who, may.read)
      const { id } = request.params
      if (!jobId.safeParse(id).success) throw noJob(id)
      const after = lastId(request.headers['last-event-id'])
      if (open.size >= most) throw tooMany(most)
      return await stream({ id, after }, context, reply)
    } catch (error) {
      return answerFailure(reply, failureOf(error), error)
    }
  })

  async function stream(
    { id, after }: { id: string; after: number },
    { jobs, still }: OpenContext,
    reply: FastifyReply,
  ) {
    const job = await jobs.get(id)
    if (!job) throw noJob(id)
    const out = new PassThrough()
    const writer = new EventWriter(out)
    const leave = await jobs.follow(id, after, (news) => writer.tell(news))
    if (!leave) throw noJob(id)
    if (job.endedAt !== null && writer.told === 0) {
      leave()
      return reply.code(204).send()
    }
    open.add(out)
    const beat = setInterval(() => {
      writer.beat()
      // Who was signed out meanwhile hears no more.
      void still(may.read).then((allowed) => allowed || out.end())
    }, heartbeat)
    out.once('close', () => {
      clearInterval(beat)
      open.delete(out)
      leave()
    })
    reply.header('Content-Type', 'text/event-stream; charset=utf-8')
    reply.header('Cache-Control', 'no-cache, no-transform')
    // Proxies that gather answers would hold the events back.
    reply.header('X-Accel-Buffering', 'no')
    return reply.send(out)
  }
}

/** Writes news of a job into a stream, and ends it with the job. */
class EventWriter {
  told = 0
  readonly #out: PassThrough
  #last = Number.NEGATIVE_INFINITY

  constructor(out: PassThrough) {
    this.#out = out
    // After a break a browser comes back in two seconds.
    out.write('retry: 2000\n\n')
  }

  tell(news: JobNews): void {
    if (this.#out.writableEnded) return
    this.told++
    if ('event' in news) {
      const { sequence, kind, at } = news.event
      this.#out.write(`id: ${sequence}\nevent: ${kind}\ndata: ${JSON.stringify({ kind, at, job: news.job })}\n\n`)
      if (kind === 'ended') this.#out.end()
      return
    }
    // Who reads slowly is told less of it, not later.
    const now = performance.now()
    if (now - this.#last < pause || this.#out.writableNeedDrain) return
    this.#last = now
    this.#out.write(`event: progress\ndata: ${JSON.stringify(news.progress)}\n\n`)
  }

  beat(): void {
    if (!this.#out.writableEnded) this.#out.write(': still here\n\n')
  }
}

const id = z.coerce.number().int().min(0).max(1e9)

function lastId(header: string | string[] | undefined): number {
  if (header === undefined || header === '') return 0
  const read = id.safeParse(header)
  if (read.success) return read.data
  const message = `Last-Event-ID must be the id of one of the job’s events, got “${String(header).slice(0, 40)}”`
  return refuse([{ path: ['Last-Event-ID'], message }])
}

const tooMany = (most: number) =>
  new ApiError({ code: 'busy', message: `${most} streams of events are open already`, retryAfter: 30 })
