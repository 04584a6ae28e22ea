import { ofEvent } from '../records/leadContracts.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import {
  doubts,
  eventEstimates,
  fieldCheck,
  forecast,
  ofField,
  ofMatch,
  ofTeam,
  teamPage,
  timedTeams as timed,
} from './contracts.ts'
import { doubtsIn } from './doubts.ts'
import { estimatesOf, teamOf } from './estimates.ts'
import { fieldOf, timedTeams } from './field.ts'
import { forecastOf } from './forecast.ts'

/** What the field says of robots. */
export const estimatesRouter = router({
  event: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/estimates',
        may: may.read,
        summary: 'What is believed of all teams of an event after what was recorded, each with its intervals',
        answer: eventEstimates,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => estimatesOf(ctx, event)),

  team: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/teams/{team}',
        may: may.read,
        summary: 'What is known of one team: its estimates, its matches as they were seen, and what it says of itself',
        answer: teamPage,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(ofTeam)
    .query(({ input, ctx }) => teamOf(ctx, input)),

  forecast: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/matches/{match}/forecast',
        may: may.read,
        summary: 'How a match of the schedule would end, its robots played as they were seen',
        answer: forecast,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(ofMatch)
    .query(({ input, ctx }) => forecastOf(ctx, input)),

  timed: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/field',
        may: may.read,
        summary: 'Which robots have records with times, in matches and in practice',
        answer: timed,
        errors: ['malformed', 'notFound'],
      },
    })
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => timedTeams(ctx, event)),

  field: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/field/{team}',
        may: may.read,
        summary: 'What a design says of its trips beside what was timed of a robot, leg by leg and by driver',
        answer: fieldCheck,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(ofField)
    .query(({ input, ctx }) => fieldOf(ctx, input)),

  doubts: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/doubts',
        may: may.lead,
        summary: 'Records that do not fit the official results or each other, with the evidence',
        answer: doubts,
        errors: ['malformed', 'notFound', 'busy', 'overBudget'],
      },
    })
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => doubtsIn(ctx, event)),
})
