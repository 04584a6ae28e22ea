import cookies from '@fastify/cookie'
import type { FastifyInstance, FastifyReply } from 'fastify'
import type { Jobs } from '../../jobs/index.ts'
import type { Live } from '../../live/index.ts'
import type { Session, Store } from '../../store/types.ts'
import type { Pool } from '../compute/pool.ts'
import { ApiError } from '../errors.ts'
import { Files } from '../exchange/files.ts'
import { Attempts } from '../people/attempts.ts'
import { say } from '../sentences.ts'
import type { OpenContext } from '../trpc.ts'
import { admitted, type May, type Who, whoeverSitsHere } from '../who.ts'
import { type Door, dropToken, keepToken, tokenOf } from './door.ts'
import { refuseElsewhere } from './onlyHere.ts'
import { Pace } from './pace.ts'
import type { Reach } from './reach.ts'

export type ContextOf = (reply: FastifyReply) => Promise<OpenContext>

/** What all requests share. */
export interface Shared {
  store: Store
  /** Id of the workspace of whoever sits at a server that belongs to nobody yet. */
  workspaceId: string
  jobsOf(workspaceId: string): Promise<Jobs>
  pool: Pool
  live: Live
  version: string
  reach(): Reach
  /** The clock by which attempts to sign in are limited (ms); for tests. */
  now?: (() => number) | undefined
  /** Requests of one device in a minute, for tests. */
  mostRequests?: number | undefined
  /** Told when the server gets its first lead. */
  claimed?: (() => void) | undefined
}

const whoOf = ({ person, device }: Session): Who => ({
  role: person.role,
  person: person.id,
  nickname: person.nickname,
  device: device.id,
})

function aborted(reply: FastifyReply): AbortSignal {
  const controller = new AbortController()
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort()
  })
  return controller.signal
}

/** Knows of each request who asks, and in which workspace. */
export async function offerContext(app: FastifyInstance, shared: Shared): Promise<ContextOf> {
  const { store, pool, live, version, reach } = shared
  const files = new Files()
  app.addHook('onClose', () => files.close())
  await app.register(cookies)
  let isClaimed = await store.entrance.isClaimed()
  const attempts = new Attempts(shared.now, store.signals)
  const gate: Pick<Door, 'isClaimed' | 'claimed' | 'attempts'> = {
    isClaimed: () => isClaimed,
    claimed: () => {
      if (isClaimed) return
      isClaimed = true
      shared.claimed?.()
    },
    attempts,
  }
  // Another process may have let the first lead in.
  if (store.shared)
    app.addHook('onRequest', async () => {
      // While the database is away, what asks it says so itself.
      if (!isClaimed && (await store.entrance.isClaimed().catch(() => false))) gate.claimed()
    })
  refuseElsewhere(app, gate.isClaimed)

  const sessionOf = async (token: string | null) => (token === null ? null : store.entrance.session(token))
  limitDevices(app, { sessionOf, pace: new Pace(shared.mostRequests, shared.now) })
  const whoIs = (session: Session | null): Who | null => (session ? whoOf(session) : isClaimed ? null : whoeverSitsHere)

  return async (reply) => {
    const token = tokenOf(reply.request)
    const session = await sessionOf(token)
    const workspaceId = session?.workspaceId ?? shared.workspaceId
    return {
      store,
      workspace: store.workspace(workspaceId),
      pool,
      files,
      jobs: await shared.jobsOf(workspaceId),
      who: whoIs(session),
      session,
      door: { ...gate, token, begin: (fresh) => keepToken(reply, fresh), end: () => dropToken(reply) },
      tell: (news) => live.publish(workspaceId, news),
      hear: (heard) => live.hear(workspaceId, heard),
      ages: (event) => live.ages(workspaceId, event),
      version,
      reach,
      signal: aborted(reply),
      still: async (allowed: May) => {
        try {
          const now = await sessionOf(token)
          return (now?.workspaceId ?? shared.workspaceId) === workspaceId && admitted(whoIs(now), allowed) !== null
        } catch {
          return false
        }
      },
      log: (error) => app.log.error(error),
    }
  }
}

const asked = /^\/(api|trpc)\//

/** A device that runs wild is told to wait; the others, and whoever is not signed in, are not its business. */
function limitDevices(
  app: FastifyInstance,
  { sessionOf, pace }: { sessionOf(token: string | null): Promise<Session | null>; pace: Pace },
): void {
  app.addHook('onRequest', async (request) => {
    if (!asked.test(request.url)) return
    const session = await sessionOf(tokenOf(request))
    const seconds = session ? pace.count(session.device.id) : 0
    if (seconds === 0) return
    throw new ApiError({
      code: 'tooMany',
      ...say({ code: 'tooManyRequests', parts: { seconds } }),
      retryAfter: seconds,
    })
  })
}
