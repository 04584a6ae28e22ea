import { agreedPlan } from '../contracts/scouting/index.ts'
import { ApiError } from '../errors.ts'
import { eventAt } from '../event/reading.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { briefingOf } from './briefing.ts'
import { brokenOf } from './broken.ts'
import { brokenAnswer, brokenRequest } from './brokenContracts.ts'
import { agreeRequest, briefingAnswer, briefingRequest } from './contracts.ts'

/** Minutes before a match. */
export const briefingRouter = router({
  get: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/matches/{match}/briefing',
        may: may.compute,
        summary:
          'All that is said before a match: who does what, when each goes for its finish, whom to watch, and what would change that',
        answer: briefingAnswer,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(briefingRequest)
    .query(({ input, ctx }) => briefingOf(ctx, input)),

  agree: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/plans',
        may: ['driveTeam'],
        summary: 'Keeps what was agreed for a match, with a note; nothing that was agreed before is changed',
        answer: agreedPlan,
        errors: ['malformed', 'forbidden', 'notFound', 'tooLarge', 'notJson'],
      },
    })
    .input(agreeRequest)
    .mutation(async ({ input: { event, ...plan }, ctx }) => {
      await eventAt(ctx.workspace, event)
      const kept = await ctx.workspace.plans.agree(event, { ...plan, person: ctx.who.person })
      if (!kept)
        throw new ApiError({
          code: 'notFound',
          message: `There is no match ${plan.match} in this event`,
          path: ['match'],
        })
      ctx.tell({ event, what: 'plans' })
      return kept
    }),

  broken: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/events/{event}/teams/{team}/broken',
        may: may.read,
        summary:
          'What scouts saw of a robot’s matches that its pit crew looks after: where it stopped, lost time or dropped out, and their notes',
        answer: brokenAnswer,
        errors: ['malformed', 'notFound'],
      },
    })
    .input(brokenRequest)
    .query(({ input, ctx }) => brokenOf(ctx, input)),
})
