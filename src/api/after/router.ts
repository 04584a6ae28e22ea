import type * as z from 'zod'
import { fileName } from '../exchange/fileName.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { afterOf, publishedOf } from './after.ts'
import { afterAnswer, afterRequest, publishedAnswer } from './contracts.ts'

/** After an event. */
export const afterRouter = router({
  event: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/after/{team}',
        may: may.read,
        summary: 'What was predicted of our team at an event, what was seen, and what that asks',
        answer: afterAnswer,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(afterRequest)
    .query(({ input, ctx }) => afterOf(ctx, input)),

  published: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/published/{team}',
        may: may.read,
        summary:
          'The event as it can be given to other teams: official numbers and counted pieces, no ratings and no names',
        answer: publishedAnswer,
        sends: {
          type: 'application/json',
          file: (answer) => {
            const published = answer as z.infer<typeof publishedAnswer>
            return {
              name: `${fileName(published.event.id)}-published.json`,
              body: [JSON.stringify(published, null, 1), '\n'],
            }
          },
        },
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(afterRequest)
    .query(({ input, ctx }) => publishedOf(ctx, input)),
})
