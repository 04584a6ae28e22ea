import * as z from 'zod'
import { checkAssignments, deal, voided } from '../../model/event/index.ts'
import type { Assignment } from '../../model/scouting/types.ts'
import { seat } from '../contracts/scouting/index.ts'
import { type Context, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { assigned, assignment, assignments, dealing, dealt, event, mark, whoWatches } from './contracts.ts'
import { byOf, changedMeanwhile, eventAt, refusal, refuseWrong } from './reading.ts'

const at = '/api/events/{event}/assignments'

/** Minutes without a match in which everybody rests, where nothing is said. */
const usualPause = 30

/** Those who are of the team, as they are called. */
async function members({ workspace }: Context) {
  const people = await workspace.people.list()
  return people.filter(({ endedAt }) => endedAt === null).map(({ id, nickname, role }) => ({ id, nickname, role }))
}

async function refuseStrangers(ctx: Context, people: readonly string[], path: string): Promise<void> {
  const known = new Set((await members(ctx)).map(({ id }) => id))
  const stranger = people.find((person) => !known.has(person))
  if (stranger !== undefined) throw refusal('malformed', { code: 'noWatcher', parts: { person: stranger } }, [path])
}

const minutesBetween = (a: string | undefined, b: string | undefined): number =>
  a === undefined || b === undefined ? 0 : (Date.parse(b) - Date.parse(a)) / 60_000

export const assignmentsRouter = router({
  get: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: at,
        may: may.member,
        summary: 'Who watches whom',
        answer: whoWatches,
        errors: ['malformed', 'notFound'],
      },
    })
    .input(z.strictObject({ event }))
    .query(async ({ input, ctx }) => {
      await eventAt(ctx.workspace, input.event)
      const [now, people] = await Promise.all([ctx.workspace.events.assignments(input.event), members(ctx)])
      return { ...now, people }
    }),

  preview: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: `${at}/preview`,
        may: may.lead,
        audit: false,
        summary:
          'Shares the seats of the matches to come out among people, with breaks and even load; nothing is saved',
        answer: dealt,
        errors: ['malformed', 'notFound', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ event, ...dealing }))
    .mutation(async ({ input, ctx }) => {
      const { people, longest, rest, pause = usualPause, keep = false } = input
      await eventAt(ctx.workspace, input.event)
      await refuseStrangers(ctx, people, 'people')
      const { events } = ctx.workspace
      const [{ matches: stored }, results, now] = await Promise.all([
        events.matches(input.event),
        events.results(input.event),
        events.assignments(input.event),
      ])
      const matches = stored.map(({ match }) => match)
      const gone = voided(matches)
      const over = new Set(results.flatMap(({ match, result }) => (result === null ? [] : [match])))
      const from = input.from === undefined ? 0 : matches.findIndex(({ id }) => id === input.from)
      if (from < 0) throw refusal('malformed', { code: 'noMatch', parts: { id: input.from! } }, ['from'])
      const isClosed = matches.map(({ id }, index) => index < from || over.has(id) || gone.has(id))
      const closed = new Set(matches.filter((_, index) => isClosed[index]).map(({ id }) => id))
      const answer = deal({
        matches: matches.map(({ id, time }, index) => ({
          id,
          pause: minutesBetween(matches[index - 1]?.time, time) >= pause,
          closed: closed.has(id),
        })),
        people,
        longest,
        rest,
        kept: now.assignments.filter(({ match }) => keep || closed.has(match)),
      })
      const open = answer.assignments.filter(({ match }) => !closed.has(match))
      return { ...answer, assignments: open, mark: now.mark }
    }),

  assign: procedure
    .meta({
      endpoint: {
        method: 'PUT',
        path: at,
        may: may.lead,
        audit: false,
        summary: 'Assigns seats, if the assignments are still as they were looked at',
        answer: assigned,
        errors: ['malformed', 'forbidden', 'notFound', 'conflict', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ event, mark, assignments }))
    .mutation(async ({ input, ctx }) => {
      await eventAt(ctx.workspace, input.event)
      const { events } = ctx.workspace
      const [{ matches }, { assignments: before }] = await Promise.all([
        events.matches(input.event),
        events.assignments(input.event),
      ])
      refuseWrong(
        checkAssignments(
          matches.map(({ match }) => match),
          merged(before, input.assignments),
        ),
        (match) => ['assignments', input.assignments.findIndex((each) => each.match === match)],
      )
      const people = input.assignments.flatMap(({ person }) => (person === null ? [] : [person]))
      await refuseStrangers(ctx, [...new Set(people)], 'assignments')
      const outcome = await events.assign(input.event, { ...input, by: byOf(ctx) })
      if ('stale' in outcome) throw changedMeanwhile()
      ctx.tell({ event: input.event, what: 'assignments' })
      return outcome.applied
    }),

  take: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/seat',
        may: ['scout'],
        audit: false,
        summary: 'Takes a seat over; who had it gets the seat, if any, that its taker had in the match',
        answer: z.array(assignment),
        errors: ['malformed', 'forbidden', 'notFound', 'tooLarge', 'notJson'],
      },
    })
    .input(
      z.strictObject({
        event,
        match: dealing.from.unwrap(),
        seat,
        person: z
          .string()
          .min(1)
          .max(100)
          .optional()
          .describe('Whose it shall be, where a lead says so; else who asks'),
      }),
    )
    .mutation(async ({ input, ctx }) => {
      const { who, workspace } = ctx
      await eventAt(workspace, input.event)
      const person = input.person ?? who.person
      if (person === null) throw refusal('malformed', { code: 'whoTakes', parts: {} }, ['person'])
      if (person !== who.person && who.role !== 'lead')
        throw refusal('forbidden', { code: 'onlyForYourself', parts: {} }, ['person'])
      await refuseStrangers(ctx, [person], 'person')
      const { match, seat } = input
      const changed = await workspace.events.takeSeat(input.event, { match, seat, person, by: byOf(ctx) })
      if (changed === null) throw refusal('notFound', { code: 'noMatch', parts: { id: match } }, ['match'])
      ctx.tell({ event: input.event, what: 'assignments' })
      return changed
    }),
})

/** The assignments as they would be: those of the request in the place of those of their seats, twice where they are given twice. */
function merged(before: readonly Assignment[], given: readonly Assignment[]): Assignment[] {
  const place = ({ match, seat: { alliance, position } }: Assignment) => `${match} ${alliance} ${position}`
  const replaced = new Set(given.map(place))
  return [...before.filter((each) => !replaced.has(place(each))), ...given]
}
