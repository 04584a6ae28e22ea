import * as z from 'zod'
import { read } from '../documents/read.ts'
import { type Endpoint, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { eventsAnswer, packAnswer, packRequest, trainingAnswer, trainingRequest } from './contracts.ts'
import { markOf, packOf } from './pack.ts'
import { trainingOf } from './training.ts'

const endpoint = (offered: Endpoint): { endpoint: Endpoint } => ({ endpoint: offered })

/** What phones in the stands take along. */
export const stands = router({
  events: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: '/api/stands',
        may: may.member,
        summary: 'The events that a phone can be prepared for, newest first',
        answer: eventsAnswer,
      }),
    )
    .input(z.strictObject({}))
    .query(async ({ ctx: { workspace } }) => {
      const summaries = await workspace.list('event')
      const events = await Promise.all(summaries.map(({ id }) => read(workspace, 'event', { id })))
      return events
        .flatMap((event) => (event ? [event.body] : []))
        .map(({ id, name, startsOn = null }) => ({ id, name, startsOn }))
        .sort((a, b) => (b.startsOn ?? '').localeCompare(a.startsOn ?? '') || a.name.localeCompare(b.name))
    }),

  pack: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: '/api/stands/{event}',
        may: may.member,
        summary: 'Game, schedule and assignments of an event for a phone; only their mark where it has them already',
        answer: packAnswer,
        errors: ['malformed', 'notFound'],
      }),
    )
    .input(packRequest)
    .query(async ({ input: { event, since }, ctx }) => {
      const pack = await packOf(ctx, event)
      const mark = markOf(pack)
      const serverTime = new Date().toISOString()
      return since === mark ? { same: true as const, serverTime, mark } : { ...pack, serverTime, mark }
    }),

  training: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: '/api/stands/{event}/training',
        may: may.member,
        summary: 'A simulated match of the event’s game to train on: where its robots were, and what happened',
        answer: trainingAnswer,
        errors: ['malformed', 'notFound', 'notOffered', 'overBudget', 'busy'],
      }),
    )
    .input(trainingRequest)
    .query(({ input, ctx }) => trainingOf(ctx, input)),
})
