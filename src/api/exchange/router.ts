import * as z from 'zod'
import { event } from '../event/contracts.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { archiveOf, bring, readArchive } from './archive.ts'
import { bringReport, eventArchive, mostFileBytes, preview } from './contracts.ts'
import { fileName } from './fileName.ts'

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
            const { contents } = answer as z.infer<typeof eventArchive>
            return { name: `${fileName(contents.event.at(-1)!.body.id)}-archive.json`, body: JSON.stringify(answer) }
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
    .mutation(({ input, ctx }) =>
      bring(ctx, readArchive(input.file), { preview: input.preview ?? false, kind: 'archive' }),
    ),
})
