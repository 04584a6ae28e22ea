import * as z from 'zod'
import { checkResults } from '../../model/event/index.ts'
import type { Result } from '../../model/scouting/types.ts'
import type { StoredResult } from '../../store/types.ts'
import { list } from '../contracts/primitives.ts'
import { matchResult } from '../contracts/scouting/index.ts'
import { type Context, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { event, mostMatches, resultEntry, resultsPreview, storedResult } from './contracts.ts'
import { byOf, changedMeanwhile, eventAt, gameOf, refusal, refuseWrong } from './reading.ts'

const at = '/api/events/{event}/results'

async function checked({ workspace }: Context, id: string, results: readonly Result[]) {
  const record = await eventAt(workspace, id)
  const [game, { matches }] = await Promise.all([gameOf(workspace, record.game), workspace.events.matches(id)])
  const findings = checkResults(
    game,
    matches.map(({ match }) => match),
    results,
  )
  return { matches, findings }
}

export const resultsRouter = router({
  get: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: at,
        may: may.member,
        summary: 'The official results of an event, each in its newest state',
        answer: z.array(storedResult),
        errors: ['malformed', 'notFound'],
      },
    })
    .input(z.strictObject({ event }))
    .query(async ({ input, ctx }) => {
      await eventAt(ctx.workspace, input.event)
      return ctx.workspace.events.results(input.event)
    }),

  history: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: `${at}/{match}`,
        may: may.member,
        summary: 'Every state of a match’s result, newest first',
        answer: z.array(storedResult),
        errors: ['malformed', 'notFound'],
      },
    })
    .input(z.strictObject({ event, match: z.string().min(1).max(100) }))
    .query(async ({ input, ctx }) => {
      await eventAt(ctx.workspace, input.event)
      return ctx.workspace.events.resultHistory(input.event, input.match)
    }),

  preview: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: `${at}/preview`,
        may: may.lead,
        audit: false,
        summary: 'What results would change and what is wrong with them, with the entries that apply them',
        answer: resultsPreview,
        errors: ['malformed', 'notFound', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ event, results: list(matchResult, 0, mostMatches, 'Results') }))
    .mutation(async ({ input, ctx }) => {
      const [{ matches, findings }, stored] = await Promise.all([
        checked(ctx, input.event, input.results),
        ctx.workspace.events.results(input.event),
      ])
      const revisions = new Map(matches.map(({ match, revision }) => [match.id, revision]))
      const before = new Map(stored.map((each) => [each.match, each]))
      const given = input.results.filter(({ match }) => revisions.has(match))
      const isSame = (result: Result) => sameResult(before.get(result.match), result)
      const changing = given.filter((result) => !isSame(result))
      return {
        findings,
        entries: changing.map((result) => ({
          match: result.match,
          base: before.get(result.match)?.revision ?? 0,
          matchRevision: revisions.get(result.match)!,
          result,
        })),
        fresh: changing.filter(({ match }) => !before.get(match)?.result).length,
        corrected: changing.map(({ match }) => match).filter((match) => before.get(match)?.result),
        same: given.filter(isSame).length,
      }
    }),

  enter: procedure
    .meta({
      endpoint: {
        method: 'PUT',
        path: at,
        may: may.lead,
        audit: false,
        summary:
          'Enters, corrects or takes back results: all, or none where something was changed since it was looked at',
        answer: z.array(storedResult),
        errors: ['malformed', 'forbidden', 'notFound', 'conflict', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ event, results: list(resultEntry, 1, mostMatches, 'Results on their way in') }))
    .mutation(async ({ input, ctx }) => {
      const entries = input.results
      const other = entries.findIndex(({ match, result }) => result !== null && result.match !== match)
      if (other >= 0) {
        const parts = { entry: entries[other]!.match, result: entries[other]!.result!.match }
        throw refusal('malformed', { code: 'otherMatch', parts }, ['results', other, 'result', 'match'])
      }
      const results = entries.map(({ match, result }) => ({ ...(result ?? nothing), match }))
      const { findings } = await checked(ctx, input.event, results)
      refuseWrong(findings, (match) => ['results', entries.findIndex((entry) => entry.match === match)])
      const outcome = await ctx.workspace.events.enter(input.event, entries, byOf(ctx))
      if ('stale' in outcome) throw changedMeanwhile()
      ctx.tell({ event: input.event, what: 'results' })
      if (entries.some(({ states }) => states)) ctx.tell({ event: input.event, what: 'schedule' })
      return outcome.applied
    }),
})

const nothing = { red: { points: { total: 0 } }, blue: { points: { total: 0 } } }

/** By what they say: fields may come in another order. */
function sameResult(before: StoredResult | undefined, result: Result): boolean {
  const sorted = (value: unknown): string =>
    JSON.stringify(value, (_, part) =>
      typeof part === 'object' && part !== null && !Array.isArray(part)
        ? Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)))
        : part,
    )
  return before?.result != null && sorted(before.result) === sorted(result)
}
