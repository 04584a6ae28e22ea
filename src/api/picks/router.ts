import * as z from 'zod'
import type { Code } from '../errors.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import {
  calledRequest,
  event,
  notedRequest,
  orderRequest,
  pickOrder,
  ratings,
  ratingsRequest,
  selectionLines,
} from './contracts.ts'
import { orderIn } from './order.ts'
import { packedRatings } from './rated.ts'
import { addLines, linesOf } from './selection.ts'

const path = '/api/events/{event}/selection'
const writing: readonly Code[] = ['malformed', 'notFound', 'conflict', 'tooLarge', 'notJson']

/** How alliances are formed at an event, as it is called out, and our own notes to it. */
export const picksRouter = router({
  lines: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path,
        may: may.read,
        summary: 'What was called out at the selection, line by line; for leads with their notes',
        answer: selectionLines,
        errors: ['malformed', 'notFound'],
      },
    })
    .input(z.strictObject({ event }))
    .query(({ input, ctx }) => linesOf(ctx, input.event)),

  write: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path,
        // Who stands on the field hears it first.
        may: ['driveTeam'],
        // Lines are a log of their own.
        audit: false,
        summary: 'Writes down what was called out, if nobody has written anything since; all lines or none',
        answer: selectionLines,
        errors: writing,
      },
    })
    .input(calledRequest)
    .mutation(({ input, ctx }) => addLines(ctx, input)),

  note: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: `${path}/notes`,
        may: may.lead,
        audit: false,
        summary: 'Sets teams aside, or sets our own order, if nobody has since; all lines or none',
        answer: selectionLines,
        errors: writing,
      },
    })
    .input(notedRequest)
    .mutation(({ input, ctx }) => addLines(ctx, input)),

  order: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/pick-order/{team}',
        may: may.compute,
        summary:
          'Whom a team should invite first as the selection stands, with intervals; for leads without whom they set aside',
        answer: pickOrder,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(orderRequest)
    .query(({ input, ctx }) => orderIn(ctx, input)),

  ratings: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/ratings',
        // It stays on the device, as a pack does.
        may: may.compute,
        summary:
          'What each team is expected to do alone, by common draw, for a browser that works out pick orders itself',
        answer: ratings,
        squeezed: true,
        errors: ['malformed', 'notFound', 'busy', 'overBudget'],
      },
    })
    .input(ratingsRequest)
    .query(({ input, ctx }) => packedRatings(ctx, input)),
})
