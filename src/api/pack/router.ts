import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { packAnswer, packRequest } from './contracts.ts'
import { packOf } from './pack.ts'

/** What screens between the matches take along. */
export const packRouter = router({
  get: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/pack',
        // It stays on the device: not for whoever only looks, since it rates every team.
        may: may.compute,
        summary:
          'Game, schedule, results, ranking and all teams as robots, for a browser that briefs and picks without a connection; only its mark where it has that already',
        answer: packAnswer,
        squeezed: true,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(packRequest)
    .query(({ input, ctx }) => packOf(ctx, input)),
})
