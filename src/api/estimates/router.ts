import { ofEvent } from '../records/leadContracts.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { changedIn } from './changed.ts'
import {
  changed,
  changedRequest,
  doubts,
  eventEstimates,
  forecast,
  halfLives,
  ofMatch,
  ofTeam,
  ofTeams,
  sideBySide,
  teamPage,
  without,
  withoutRequest,
} from './contracts.ts'
import { doubtsIn } from './doubts.ts'
import { estimatesOf, teamOf } from './estimates.ts'
import { forecastOf } from './forecast.ts'
import { halfLivesIn } from './halfLives.ts'
import { madeOfTeam } from './made.ts'
import { madeOfTeam as madeContract } from './madeContract.ts'
import { sideBySideIn } from './sideBySide.ts'
import { withoutOf } from './without.ts'

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

  made: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/teams/{team}/made',
        may: may.read,
        summary: 'What each number of a team is made of: own matches with their records, what it claims, and the event',
        answer: madeContract,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(ofTeam)
    .query(({ input, ctx }) => madeOfTeam(ctx, input)),

  sideBySide: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/side-by-side',
        may: may.read,
        summary: 'Two to six teams beside each other, with the chance that one is better than another',
        answer: sideBySide,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(ofTeams)
    .query(({ input, ctx }) => sideBySideIn(ctx, input)),

  halfLives: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/half-lives',
        may: may.read,
        summary: 'How well each half-life of own matches would have forecast every next match of the event',
        answer: halfLives,
        errors: ['malformed', 'notFound', 'unreachable', 'busy', 'overBudget'],
      },
    })
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => halfLivesIn(ctx, event)),

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

  without: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/doubts/without',
        may: may.lead,
        audit: false,
        summary: 'What is believed of robots and forecast of their coming matches with and without some records',
        answer: without,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(withoutRequest)
    .mutation(({ input, ctx }) => withoutOf(ctx, input)),

  changed: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/changed',
        may: may.member,
        audit: false,
        summary: 'What own records changed about the robots that they are about',
        answer: changed,
        errors: ['malformed', 'notFound', 'busy', 'overBudget'],
      },
    })
    .input(changedRequest)
    .mutation(({ input, ctx }) => changedIn(ctx, input)),
})
