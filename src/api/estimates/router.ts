import { ofEvent } from '../records/leadContracts.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { changedIn } from './changed.ts'
import {
  changed,
  changedRequest,
  doubts,
  eventEstimates,
  fieldCheck,
  forecast,
  halfLives,
  ofField,
  ofMatch,
  ofTeam,
  ofTeams,
  sideBySide,
  teamPage,
  timedTeams as timed,
  without,
  withoutRequest,
} from './contracts.ts'
import { doubtsIn } from './doubts.ts'
import { earlierIn, withEarlier } from './earlierChanges.ts'
import { earlierChanges, earlierOffered, earlierRequest } from './earlierContracts.ts'
import { estimatesOf, teamOf } from './estimates.ts'
import { fieldOf, timedTeams } from './field.ts'
import { halfLivesIn } from './halfLives.ts'
import { forecastToday, shownFor } from './kept.ts'
import { madeOfTeam } from './made.ts'
import { madeOfTeam as madeContract } from './madeContract.ts'
import { recordIn } from './record.ts'
import { forecastRecord, forecastsMade, makeForecasts, mostAtOnce } from './recordContracts.ts'
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

  earlier: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/earlier',
        may: may.read,
        summary: 'Earlier events whose matches could count here, those with most teams of this event first',
        answer: earlierOffered,
        errors: ['malformed', 'notFound'],
      },
    })
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => earlierIn(ctx, event)),

  withEarlier: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/earlier',
        may: may.read,
        audit: false,
        summary: 'What is believed of all teams with an earlier event and without any; nothing is changed',
        answer: earlierChanges,
        errors: ['malformed', 'notFound', 'busy', 'overBudget'],
      },
    })
    .input(earlierRequest)
    .mutation(({ input, ctx }) => withEarlier(ctx, input)),

  forecast: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/matches/{match}/forecast',
        may: may.read,
        summary:
          'How a match of the schedule would end, its robots played as they were seen. What is shown before a match is kept, as a record of it: once for the same records, whoever asks',
        answer: forecast,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(ofMatch)
    .query(({ input, ctx }) => shownFor(ctx, input)),

  makeForecasts: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/forecasts',
        may: may.lead,
        // What is kept is a log of its own.
        audit: false,
        summary:
          'Makes and keeps forecasts of the day’s coming matches that have none from what is known now, some at a time',
        answer: forecastsMade,
        errors: ['malformed', 'forbidden', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(makeForecasts)
    .mutation(({ input: { event, most = mostAtOnce }, ctx }) => forecastToday(ctx, { event, most })),

  record: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/forecasts',
        may: may.read,
        summary: 'What became of forecasts that were kept before their matches, and how far they can be trusted',
        answer: forecastRecord,
        errors: ['malformed', 'notFound'],
      },
    })
    .input(ofEvent)
    .query(({ input: { event }, ctx }) => recordIn(ctx, event)),

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
