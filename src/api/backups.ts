import * as z from 'zod'
import { type Backup, backupReasons } from '../store/index.ts'
import { ApiError } from './errors.ts'
import { say } from './sentences.ts'
import { procedure, router } from './trpc.ts'
import { may } from './who.ts'

const moment = z.string().describe('ISO 8601')

const backup = z
  .strictObject({
    name: z.string().describe('Its file in the folder of copies'),
    madeAt: moment,
    bytes: z.int(),
    reason: z.enum(backupReasons).nullable().describe('Null: its list of counts and hashes is missing'),
    tables: z.int().nullable(),
    rows: z.int().nullable(),
    proof: z
      .strictObject({
        provenAt: moment,
        faults: z.array(z.string()).describe('Empty: all that was in the database is in the copy, and it opens'),
        rows: z.int(),
        milliseconds: z.int(),
      })
      .nullable()
      .describe('What came of opening it elsewhere; null: not tried yet'),
  })
  .meta({ id: 'Backup' })

const told = ({ name, madeAt, bytes, manifest, proof }: Backup): z.infer<typeof backup> => ({
  name,
  madeAt,
  bytes,
  reason: manifest?.reason ?? null,
  tables: manifest?.tables.length ?? null,
  rows: manifest?.tables.reduce((sum, { rows }) => sum + rows, 0) ?? null,
  proof,
})

/** Copies of the server's whole database. Their content is for whoever has the machine; here are only their names and what is known of them. */
export const backups = router({
  list: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/backups',
        may: may.lead,
        summary:
          'Copies of the database, newest first, and whether they were proven; null: they are made by the engine’s own means',
        answer: z.array(backup).nullable(),
      },
    })
    .input(z.strictObject({}))
    .query(async ({ ctx }) => (await ctx.store.backups?.list())?.map(told) ?? null),

  make: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/backups',
        may: may.lead,
        summary: 'Makes a copy of the database while it is in use',
        answer: backup,
        errors: ['malformed', 'unreachable', 'notJson', 'tooLarge'],
      },
    })
    .input(z.strictObject({}))
    .mutation(async ({ ctx }) => {
      if (ctx.store.backups) return told(await ctx.store.backups.make('button'))
      throw new ApiError({ code: 'unreachable', ...say({ code: 'copiesElsewhere', parts: {} }) })
    }),

  prove: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/backups/{name}/proof',
        may: may.lead,
        summary: 'Opens a copy elsewhere and compares its counts and hashes',
        answer: backup,
        errors: ['malformed', 'notFound', 'notJson', 'tooLarge'],
      },
    })
    .input(z.strictObject({ name: z.string().min(1).max(200).describe('As the list names it') }))
    .mutation(async ({ input, ctx }) => {
      const proven = await ctx.store.backups?.prove(input.name)
      if (proven) return told(proven)
      throw new ApiError({ code: 'notFound', ...say({ code: 'noBackup', parts: input }), path: ['name'] })
    }),
})
