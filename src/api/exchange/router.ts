import * as z from 'zod'
import { event } from '../event/contracts.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { archiveOf, archiveText, bring, contentsOf } from './archive.ts'
import { bringReport, eventArchive, mostFileBytes, preview } from './contracts.ts'
import { fileName } from './fileName.ts'
import { refuseWithoutGame } from './tables.ts'

const anyArchive = z.unknown().meta({ override: { $ref: '#/components/schemas/EventArchive' } })

/** Whole events as files. Nicknames stand in them, so that they are for leads. */
export const exchange = router({
  archive: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/archive',
        may: may.lead,
        summary: 'Everything of an event as one file, which another server takes in',
        answer: eventArchive,
        sends: {
          type: 'application/json',
          file: (answer) => {
            const archive = answer as z.infer<typeof eventArchive>
            const { id } = archive.contents.event.at(-1)!.body
            return { name: `${fileName(id)}-archive.json`, body: archiveText(archive) }
          },
        },
        errors: ['malformed', 'notFound'],
      },
    })
    .input(z.strictObject({ event }))
    .query(({ input, ctx }) => archiveOf(ctx, input.event)),

  bringArchive: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/archive',
        may: may.lead,
        // The store writes down what it took, in the same commit.
        audit: false,
        summary: 'Takes in what an archive holds and this server has not; what is here and differs stays, and is told',
        answer: bringReport,
        takes: { type: 'application/json', most: mostFileBytes },
        errors: ['malformed', 'forbidden', 'tooLarge', 'notJson', 'storageFull'],
      },
    })
    .input(z.strictObject({ file: anyArchive, preview }))
    .mutation(async ({ input, ctx }) =>
      bring(ctx, await ctx.files.archive(input.file), { preview: input.preview ?? false, kind: 'archive' }),
    ),

  tables: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/tables',
        may: may.lead,
        summary: 'An event as CSV tables with a data package, in one zip file',
        answer: z.strictObject({ name: z.string(), zip: z.unknown() }),
        sends: {
          type: 'application/zip',
          file: (answer) => {
            const { name, zip } = answer as { name: string; zip: Uint8Array }
            return { name: `${name}.zip`, body: zip }
          },
        },
        errors: ['malformed', 'notFound'],
      },
    })
    .input(
      z.strictObject({
        event,
        mark: z.boolean().optional().describe('True: each table begins with the byte-order mark'),
        photos: z.boolean().optional().describe('False: without photos'),
      }),
    )
    .query(async ({ input: { event, mark = false, photos = true }, ctx }) => {
      const contents = await contentsOf(ctx, event)
      return ctx.files.asTables({ contents, mark, photos, made: new Date().toISOString() })
    }),

  bringTables: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/tables',
        may: may.lead,
        audit: false,
        summary: 'Takes in tables of an event; what is wrong in them is told by table, line and column',
        answer: bringReport,
        takes: { type: 'application/zip', most: mostFileBytes },
        errors: ['malformed', 'forbidden', 'tooLarge', 'notJson', 'storageFull'],
      },
    })
    .input(z.strictObject({ file: z.instanceof(Uint8Array, { error: 'The file must be a zip file' }), preview }))
    .mutation(async ({ input, ctx }) => {
      const file = await ctx.files.tables(input.file)
      await refuseWithoutGame(ctx, file.contents)
      return bring(ctx, file, { preview: input.preview ?? false, kind: 'tables' })
    }),
})
