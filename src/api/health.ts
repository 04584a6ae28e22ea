import * as z from 'zod'
import { ApiError } from './errors.ts'
import { openProcedure } from './trpc.ts'

const answer = z
  .strictObject({
    status: z.literal('ok'),
    version: z.string(),
    database: z.strictObject({ engine: z.string(), journalMode: z.string(), synchronous: z.string() }),
  })
  .meta({ id: 'Health' })

/** Answers only if the database does, with how it keeps what it acknowledged. */
export const health = openProcedure
  .meta({ endpoint: { method: 'GET', path: '/health', summary: 'Whether the server and its database work', answer } })
  .output(answer)
  .query(async ({ ctx }) => ({ status: 'ok' as const, version: ctx.version, database: await ctx.store.health() }))

const patience = 2000

/** For whatever sends requests here or elsewhere: 200 only while they would be answered. A server that stops answers 503 by itself. */
export const ready = openProcedure
  .meta({
    endpoint: {
      method: 'GET',
      path: '/ready',
      summary: 'Whether requests would be answered now',
      answer: z.strictObject({ status: z.literal('ready') }).meta({ id: 'Ready' }),
      errors: ['busy'],
    },
  })
  .query(async ({ ctx }) => {
    let late: NodeJS.Timeout | undefined
    const tooLate = new Promise<never>((_, reject) => {
      late = setTimeout(() => reject(new Error(`The database did not answer within ${patience} ms`)), patience)
    })
    try {
      await Promise.race([ctx.store.answers(), tooLate])
    } catch (error) {
      ctx.log(error)
      throw new ApiError({ code: 'busy', message: 'The database does not answer at this moment', retryAfter: 5 })
    } finally {
      clearTimeout(late)
    }
    return { status: 'ready' as const }
  })
