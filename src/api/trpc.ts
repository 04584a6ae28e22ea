import { initTRPC, TRPCError } from '@trpc/server'
import * as z from 'zod'
import type { Jobs } from '../jobs/index.ts'
import type { LiveNews } from '../live/index.ts'
import type { Session, Store, WorkspaceStore } from '../store/types.ts'
import type { Pool } from './compute/pool.ts'
import { recall } from './contracts/index.ts'
import { type Code, type Failure, table } from './errors.ts'
import type { Files } from './exchange/files.ts'
import { failureOf } from './failures.ts'
import type { Door } from './http/door.ts'
import type { Reach } from './http/reach.ts'
import { noteOf } from './people/audit.ts'
import { admitted, type May, type Who } from './who.ts'

/** What a procedure can reach that asks for no sign-in. */
export interface OpenContext {
  store: Store
  /** Of whoever is signed in; without a session that of the server's own team. */
  workspace: WorkspaceStore
  pool: Pool
  files: Files
  jobs: Jobs
  /** Who asks; null: nobody is signed in, and the server belongs to somebody. */
  who: Who | null
  session: Session | null
  /** Begins and ends the session of whoever asks. */
  door: Door
  /** Tells those who look at this workspace what changed. */
  tell(news: LiveNews): void
  /** Hears it; returns how to stop. */
  hear(heard: (news: LiveNews) => void): () => void
  /** How long ago each was told last (ms). */
  ages(event: string): { readonly [what in LiveNews['what']]: number }
  version: string
  /** Whether other devices can reach this server, and where. */
  reach(): Reach
  /** Ends when nobody waits for the answer any more. */
  signal: AbortSignal
  /** Whether who asked would still be let in: for answers that go on and on. */
  still(allowed: May): Promise<boolean>
  /** For the server's log. */
  log(error: unknown): void
}

/** What a procedure can reach. */
export interface Context extends OpenContext {
  who: Who
}

/** A procedure that asks for no sign-in, as plain HTTP and in the OpenAPI document. */
export interface OpenEndpoint {
  method: 'GET' | 'POST' | 'PUT' | 'DELETE'
  /** With {name} for what is taken from the address. */
  path: string
  summary: string
  answer: z.ZodType
  errors?: readonly Code[]
  /** Largest body (bytes), where that is more than usual. */
  most?: number
  /** Its body holds rows and may be large, so it is read beside the requests of others. */
  readByThread?: true
  /** The body is one file (`file` of the input), of at most so many bytes; all else stands in the query. */
  takes?: { type: 'application/json' | 'application/zip'; most: number }
  /** The answer is sent as a file to be kept. */
  sends?: {
    type: 'application/json' | 'application/zip'
    file(answer: unknown): { name: string; body: Uint8Array | Iterable<string> }
  }
  /** The answer is large and sent compressed to whoever reads that. */
  squeezed?: true
  /** What the screen gets as a value and plain HTTP as an error. */
  refused?(answer: unknown): Failure | null
}

/** How a procedure is offered as plain HTTP, what the OpenAPI document says of it, and who may call it. */
export interface Endpoint extends OpenEndpoint {
  /** Besides leads. */
  may: May
  /** False: a call changes nothing, or keeps a log of its own. */
  audit?: false
}

const t = initTRPC
  .context<OpenContext>()
  .meta<{ endpoint: OpenEndpoint | Endpoint }>()
  .create({
    isDev: false,
    errorFormatter({ shape, error }) {
      const { details, ...failure } = failureOf(error)
      const { status } = table[failure.code]
      return { ...shape, message: failure.message, data: { ...shape.data, httpStatus: status, failure, ...details } }
    },
  })

export const { router, createCallerFactory } = t

/** Gives every error the code that belongs to it, so that tRPC answers with the right HTTP status too. */
const told = t.procedure.use(async ({ next, getRawInput }) => {
  const result = await next()
  if (result.ok) return result
  const { cause } = result.error
  if (cause instanceof z.core.$ZodError) recall(cause.issues, await getRawInput())
  const { code, message } = failureOf(result.error)
  throw new TRPCError({ code: table[code].trpc, message, cause: result.error.cause ?? result.error })
})

/** Before anything of a request is looked at. Who may call something that says nothing of it: leads. */
const gated = told.use(({ ctx, meta, next }) => {
  const { may = [] } = (meta?.endpoint ?? {}) as Partial<Endpoint>
  return next({ ctx: { who: admitted(ctx.who, may) } })
})

/** What changed data is written down, after it did. */
const audited = gated.use(async ({ ctx, meta, path, type, next, getRawInput }) => {
  const result = await next()
  const endpoint = meta?.endpoint as Endpoint | undefined
  if (type !== 'mutation' || !result.ok || endpoint?.audit === false) return result
  if (endpoint?.refused?.(result.data)) return result
  try {
    await ctx.workspace.audit.note(noteOf(ctx.who, { action: path, input: await getRawInput(), answer: result.data }))
  } catch (error) {
    // The change itself is kept, and its answer must not say otherwise.
    ctx.log(error)
  }
  return result
})

/** A procedure for members. It begins with its endpoint, which says who may call it. */
export const procedure = { meta: (meta: { endpoint: Endpoint }) => audited.meta(meta) }

/** A procedure that anybody may call who reaches the server. */
export const openProcedure = { meta: (meta: { endpoint: OpenEndpoint }) => told.meta(meta) }
