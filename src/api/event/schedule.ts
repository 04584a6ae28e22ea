import * as z from 'zod'
import { checkSchedule, edited, type ScheduleEdit, whatChanges } from '../../model/event/index.ts'
import type { Match } from '../../model/scouting/types.ts'
import { type Context, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { event, mark, matches, remove, schedule, scheduleApplied, schedulePreview } from './contracts.ts'
import { byOf, changedMeanwhile, eventAt, refuseWrong } from './reading.ts'

const at = '/api/events/{event}'

/** What would be found in the schedule after an edit, and what is found in it now. */
async function checked({ workspace }: Context, id: string, edit: ScheduleEdit) {
  const [record, { matches: stored, mark }] = await Promise.all([eventAt(workspace, id), workspace.events.matches(id)])
  const before = stored.map(({ match }) => match)
  const after = edited(before, edit)
  // Two matches of one id would take each other's place unseen.
  const twice = edit.put.filter(({ id }, index) => edit.put.findIndex((match) => match.id === id) < index)
  const findings = checkSchedule(record, [...after.filter((match) => !twice.includes(match)), ...twice])
  return { record, before, mark, findings, already: checkSchedule(record, before) }
}

const unknownTeams = (teams: readonly { team: string }[], put: readonly Match[]): string[] => {
  const known = new Set(teams.map(({ team }) => team))
  const playing = put.flatMap(({ red, blue }) => [...red, ...blue].map(({ team }) => team))
  return [...new Set(playing.filter((team) => !known.has(team)))]
}

export const scheduleRouter = router({
  get: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: `${at}/matches`,
        may: may.member,
        summary: 'The schedule of an event in the order of play',
        answer: schedule,
        errors: ['malformed', 'notFound'],
      },
    })
    .input(z.strictObject({ event }))
    .query(async ({ input, ctx }) => {
      await eventAt(ctx.workspace, input.event)
      return ctx.workspace.events.matches(input.event)
    }),

  preview: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: `${at}/schedule/preview`,
        may: may.lead,
        audit: false,
        summary: 'What an edit of the schedule would change, what is wrong with it, and what becomes of records',
        answer: schedulePreview,
        errors: ['malformed', 'notFound', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ event, matches, remove }))
    .mutation(async ({ input, ctx }) => {
      const edit = { put: input.matches, remove: input.remove ?? [] }
      const [found, records, results] = await Promise.all([
        checked(ctx, input.event, edit),
        ctx.workspace.events.recordCounts(input.event),
        ctx.workspace.events.results(input.event),
      ])
      const withResult = new Set(results.flatMap(({ match, result }) => (result === null ? [] : [match])))
      return {
        mark: found.mark,
        findings: found.findings,
        unknownTeams: unknownTeams(found.record.teams, edit.put),
        ...whatChanges(found.before, edit, { records, results: withResult }),
      }
    }),

  edit: procedure
    .meta({
      endpoint: {
        method: 'PUT',
        path: `${at}/matches`,
        may: may.lead,
        audit: false,
        summary: 'Puts matches into the schedule and takes others out, if it is still as it was looked at',
        answer: scheduleApplied,
        errors: ['malformed', 'forbidden', 'notFound', 'conflict', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ event, mark, matches, remove }))
    .mutation(async ({ input, ctx }) => {
      const edit = { put: input.matches, remove: input.remove ?? [] }
      const { findings, already } = await checked(ctx, input.event, edit)
      // What was wrong before and is not touched does not keep other things from being put right.
      const touched = new Set(edit.put.map(({ id }) => id))
      const old = new Set(already.map(({ message }) => message))
      refuseWrong(
        findings.filter(({ match, message }) => (match !== null && touched.has(match)) || !old.has(message)),
        (match) => placeOf(edit.put, match),
      )
      const outcome = await ctx.workspace.events.edit(input.event, { ...edit, mark: input.mark, by: byOf(ctx) })
      if ('stale' in outcome) throw changedMeanwhile()
      if (outcome.applied.touched > 0) ctx.tell({ event: input.event, what: 'schedule' })
      return outcome.applied
    }),
})

function placeOf(put: readonly Match[], id: string | null): (string | number)[] {
  const index = put.findIndex((match) => match.id === id)
  return index < 0 ? ['remove'] : ['matches', index]
}
