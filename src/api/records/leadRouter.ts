import * as z from 'zod'
import type { Code } from '../errors.ts'
import { ApiError } from '../errors.ts'
import { type Endpoint, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { boardOf, observationsOf } from './board.ts'
import { correct, swap } from './corrections.ts'
import {
  apartRecord,
  board,
  choice,
  chooseRequest,
  correctRequest,
  done,
  drill,
  drillRequest,
  observations,
  observationsRequest,
  ofEvent,
  resolveRequest,
  swapRequest,
} from './leadContracts.ts'
import { decide, listApart } from './quarantine.ts'

const one = '/api/events/{event}'
const writing: readonly Code[] = [
  'malformed',
  'forbidden',
  'notFound',
  'conflict',
  'tooLarge',
  'notJson',
  'storageFull',
]

const endpoint = (offered: Endpoint): { endpoint: Endpoint } => ({ endpoint: offered })
const get = (path: string, summary: string, answer: z.ZodType): { endpoint: Endpoint } =>
  endpoint({ method: 'GET', path: one + path, may: may.lead, summary, answer, errors: ['malformed', 'notFound'] })
const post = (path: string, summary: string, answer: z.ZodType): { endpoint: Endpoint } =>
  endpoint({ method: 'POST', path: one + path, may: may.lead, summary, answer, errors: writing })

/** What a lead does with records as they come in. Nothing here changes a record: each decision is kept beside them. */
export const leadRouter = router({
  board: procedure
    .meta(
      get('/board', 'What was expected and what has arrived, which phones hold something, and what contradicts', board),
    )
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => boardOf(ctx, event)),

  observations: procedure
    .meta(
      get('/observations', 'Observations of a match that are in force, to be looked at and corrected', observations),
    )
    .input(observationsRequest)
    .query(({ input: { event, match = null }, ctx }) => observationsOf(ctx, event, match)),

  correct: procedure
    .meta(post('/corrections', 'Corrects an observation by a new record that takes its place', done))
    .input(correctRequest)
    .mutation(({ input, ctx }) => correct(ctx, input)),

  swap: procedure
    .meta(post('/swaps', 'Exchanges two robots of a match that were taken for each other, in all their records', done))
    .input(swapRequest)
    .mutation(({ input, ctx }) => swap(ctx, input)),

  quarantine: procedure
    .meta(get('/quarantine', 'Rows that were kept apart, each beside what came first', z.array(apartRecord)))
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => listApart(ctx, event)),

  resolve: procedure
    .meta(post('/quarantine', 'Decides over a row that was kept apart, or anew over one that was decided', done))
    .input(resolveRequest)
    .mutation(({ input, ctx }) => decide(ctx, input)),

  choices: procedure
    .meta(get('/choices', 'Which of several records of a robot counts, as leads chose; oldest first', z.array(choice)))
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => ctx.workspace.records.choices(event)),

  choose: procedure
    .meta(
      post(
        '/choices',
        'Lets one record of a robot in a match count alone, or all again',
        z.strictObject({ chosen: z.literal(true) }),
      ),
    )
    .input(chooseRequest)
    .mutation(async ({ input: { event, match, team, record, reason = null }, ctx }) => {
      const found = record === null ? [] : await ctx.workspace.records.get([record])
      if (record !== null && found[0]?.row.event !== event) {
        throw new ApiError({
          code: 'notFound',
          message: `There is no record ${record} in this event`,
          path: ['record'],
        })
      }
      await ctx.workspace.records.choose(event, { match, team, record, reason, person: ctx.who.person })
      ctx.tell({ event, what: 'records' })
      return { chosen: true as const }
    }),

  drill: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: `${one}/drill`,
        may: may.member,
        summary: 'The rehearsal that runs; null where none does',
        answer: z.strictObject({ drill: drill.nullable() }),
        errors: ['malformed'],
      }),
    )
    .input(ofEvent)
    .query(async ({ input: { event }, ctx }) => {
      const running = (await ctx.workspace.records.drills(event)).find(({ endedAt }) => endedAt === null)
      return { drill: running ?? null }
    }),

  startDrill: procedure
    .meta(post('/drills', 'Starts a rehearsal; the one that runs, where one does', drill))
    .input(ofEvent)
    .mutation(async ({ input: { event }, ctx }) => {
      const { records } = ctx.workspace
      const started = await records.startDrill(event, ctx.who.person)
      ctx.tell({ event, what: 'drill' })
      return started
    }),

  endDrill: procedure
    .meta(post('/drills/{drill}/end', 'Ends a rehearsal', drill))
    .input(drillRequest)
    .mutation(async ({ input: { event, drill: id }, ctx }) => {
      const ended = await ctx.workspace.records.endDrill(event, id)
      if (!ended) throw new ApiError({ code: 'notFound', message: `There is no rehearsal ${id}`, path: ['drill'] })
      ctx.tell({ event, what: 'drill' })
      return ended
    }),
})
