import { PassThrough } from 'node:stream'
import type { FastifyInstance } from 'fastify'
import type { LiveNews } from '../../live/index.ts'
import { id } from '../contracts/index.ts'
import { ApiError, refuse } from '../errors.ts'
import { failureOf } from '../failures.ts'
import type { ContextOf } from '../http/context.ts'
import { answerFailure } from '../http/errors.ts'
import type { StreamOptions } from '../jobs/events.ts'
import { admitted, may } from '../who.ts'

/** Not sooner after one news is the same told again (ms): two hundred phones that come back at once are one change to look at. */
const pause = 250

export const livePath = '/api/events/:event/live'

/**
 * What changes in an event, as server-sent events named by what changed. They carry nothing: who hears one asks anew, and so
 * does who comes back after a break, since nothing is kept for them. The first, `before`, says how long ago (ms) each was told last, so that
 * nothing is missed between a page's questions and its stream: a duration, because no two clocks agree.
 */
export function offerLive(app: FastifyInstance, contextOf: ContextOf, options: StreamOptions = {}): void {
  const { heartbeat = 15_000, most = 300 } = options
  const open = new Set<PassThrough>()
  // Before the server waits for its connections, which these would keep open.
  app.addHook('preClose', async () => {
    for (const stream of open) stream.end()
  })
  app.get<{ Params: { event: string } }>(livePath, async (request, reply) => {
    try {
      const { who, hear, ages, still } = await contextOf(reply)
      admitted(who, may.member)
      const { event } = request.params
      if (!id.safeParse(event).success) refuse([{ path: ['event'], message: 'event must be the id of an event' }])
      if (open.size >= most) throw tooMany(most)
      const out = new PassThrough()
      out.write('retry: 2000\n\n')
      const teller = new Teller(out, event)
      // Who was signed out meanwhile hears that, and no more.
      const look = () =>
        void still(may.member).then((allowed) => {
          if (allowed) return
          teller.tellAll()
          out.end()
        })
      // Heard from here on; what was told before, whoever asks compares with when its page was asked for.
      out.write(`event: before\ndata: ${JSON.stringify(ages(event))}\n\n`)
      const leave = hear((news) => {
        if (news.event !== null && news.event !== event) return
        teller.tell({ event, what: news.what })
        if (news.event === null) look()
      })
      const beat = setInterval(() => {
        if (!out.writableEnded) out.write(': still here\n\n')
        look()
      }, heartbeat)
      open.add(out)
      out.once('close', () => {
        clearInterval(beat)
        leave()
        teller.stop()
        open.delete(out)
      })
      reply.header('Content-Type', 'text/event-stream; charset=utf-8')
      reply.header('Cache-Control', 'no-cache, no-transform')
      // Proxies that gather answers would hold the events back.
      reply.header('X-Accel-Buffering', 'no')
      return reply.send(out)
    } catch (error) {
      return answerFailure(reply, failureOf(error), error)
    }
  })
}

/** Tells a kind of news at once, and again no sooner than after a pause; what comes within it is told at its end. */
class Teller {
  readonly #out: PassThrough
  readonly #event: string
  /** Whether more of that kind came within its pause. */
  readonly #pauses = new Map<LiveNews['what'], { more: boolean; timer: NodeJS.Timeout }>()

  constructor(out: PassThrough, event: string) {
    this.#out = out
    this.#event = event
  }

  tell(news: LiveNews): void {
    const paused = this.#pauses.get(news.what)
    if (paused) {
      paused.more = true
      return
    }
    if (!this.#out.writableEnded) this.#out.write(`event: ${news.what}\ndata: ${JSON.stringify(news)}\n\n`)
    const timer = setTimeout(() => {
      const more = this.#pauses.get(news.what)?.more ?? false
      this.#pauses.delete(news.what)
      if (more) this.tell(news)
    }, pause)
    this.#pauses.set(news.what, { more: false, timer })
  }

  /** Everything that waits for the end of a pause. */
  tellAll(): void {
    for (const [what, { more, timer }] of [...this.#pauses]) {
      if (!more) continue
      clearTimeout(timer)
      this.#pauses.delete(what)
      this.tell({ event: this.#event, what })
    }
  }

  stop(): void {
    for (const { timer } of this.#pauses.values()) clearTimeout(timer)
  }
}

const tooMany = (most: number) =>
  new ApiError({ code: 'busy', message: `${most} streams of news are open already`, retryAfter: 30 })
