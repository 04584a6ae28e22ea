import * as z from 'zod'
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
