import { procedure } from '../trpc.ts'
import { may } from '../who.ts'
import { seedLotsIn, seedsIn } from './seeds.ts'
import { lotsAnswer, lotsRequest, ofSeeds, seedsAnswer } from './seedsContracts.ts'

const most = 8

/** Final ranks. */
export const seedsProcedures = {
  seeds: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/seeds/{team}',
        may: may.read,
        summary:
          'Where teams end after the matches to come by the game’s ranking, and what each match of a team is worth',
        answer: seedsAnswer,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(ofSeeds)
    .query(({ input, ctx }) => seedsIn(ctx, input)),

  seedLots: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/seeds/matches',
        may: may.read,
        audit: false,
        summary:
          'Simulates some of the matches to come that seeds are made of, so that one sees how far it is and can stop',
        answer: lotsAnswer,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(lotsRequest)
    .mutation(({ input, ctx }) => seedLotsIn(ctx, { event: input.event, most: input.most ?? most })),
}
