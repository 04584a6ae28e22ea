import { initTRPC, TRPCError } from '@trpc/server'
import * as z from 'zod'
import type { Jobs } from '../jobs/index.ts'
import type { LiveNews } from '../live/index.ts'
import type { Store, WorkspaceStore } from '../store/types.ts'
import type { Pool } from './compute/pool.ts'
import { recall } from './contracts/index.ts'
import { type Code, type Failure, failureOf, table } from './errors.ts'
import type { Reach } from './http/reach.ts'
import type { Who } from './who.ts'

/** What a procedure can reach. */
export interface Context {
  store: Store
  workspace: WorkspaceStore
  pool: Pool
  jobs: Jobs
  /** Who asks. */
  who: Who
  /** Tells those who look at this workspace what changed. */
  tell(news: LiveNews): void
  version: string
  /** Whether other devices can reach this server, and where. */
  reach(): Reach
  /** Ends when nobody waits for the answer any more. */
  signal: AbortSignal
}

/** How a procedure is offered as plain HTTP, and what the OpenAPI document says of it. */
export interface Endpoint {
  method: 'GET' | 'POST' | 'PUT' | 'DELETE'
  /** With {name} for what is taken from the address. */
  path: string
  summary: string
  answer: z.ZodType
  errors?: readonly Code[]
  /** What the screen gets as a value and plain HTTP as an error. */
  refused?(answer: unknown): Failure | null
}

const t = initTRPC
  .context<Context>()
  .meta<{ endpoint: Endpoint }>()
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
export const procedure = t.procedure.use(async ({ next, getRawInput }) => {
  const result = await next()
  if (result.ok) return result
  const { cause } = result.error
  if (cause instanceof z.core.$ZodError) recall(cause.issues, await getRawInput())
  const { code, message } = failureOf(result.error)
  throw new TRPCError({ code: table[code].trpc, message, cause: result.error.cause ?? result.error })
})
