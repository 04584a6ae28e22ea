import * as z from 'zod'
import { rankEvent } from '../../model/event/index.ts'
import { count } from '../contracts/primitives.ts'
import { procedure } from '../trpc.ts'
import { may } from '../who.ts'
import { event, ranking } from './contracts.ts'
import { eventAt, gameOf } from './reading.ts'

export const rankingProcedure = procedure
  .meta({
    endpoint: {
      method: 'GET',
      path: '/api/events/{event}/ranking',
      may: may.member,
      summary: 'The ranking by the game’s rules, from the results of the qualification matches',
      answer: ranking,
      errors: ['malformed', 'notFound'],
    },
  })
  .input(
    z.strictObject({
      event,
      seed: count(0, 2 ** 32 - 1, 'Splits ties that are left at the end; 1 where nothing is said').optional(),
    }),
  )
  .query(async ({ input, ctx: { workspace } }) => {
    const record = await eventAt(workspace, input.event)
    const [game, { matches }, results] = await Promise.all([
      gameOf(workspace, record.game),
      workspace.events.matches(input.event),
      workspace.events.results(input.event),
    ])
    return rankEvent({
      game,
      event: record,
      matches: matches.map(({ match }) => match),
      results: results.flatMap(({ result }) => result ?? []),
      seed: input.seed ?? 1,
    })
  })
