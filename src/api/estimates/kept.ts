import { comingToday, forecastVersion } from '../../model/scouting/record/index.ts'
import { knownOf } from '../records/known.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'
import { type Forecast, madeFor, madeFrom } from './forecast.ts'

const resultsIn = async ({ workspace }: Pick<Context, 'workspace'>, event: string) =>
  (await workspace.events.results(event)).flatMap(({ result }) => result ?? [])

/** Whether something of a match is known already, so that what is said of it now is said too late. */
async function begunIn(ctx: Pick<Context, 'workspace'>, event: string): Promise<(match: string) => boolean> {
  const { known } = await knownOf(ctx, event)
  const begun = new Set((await resultsIn(ctx, event)).map(({ match }) => match))
  for (const { row } of known.inForce)
    if (row.kind === 'observation' && row.body.match !== null) begun.add(row.body.match)
  return (match) => begun.has(match)
}

/** A forecast as it is shown; `kept`: what is kept of it, null where its match has begun or is played again. */
export interface Shown extends Forecast {
  kept: { id: string; madeAt: string } | null
}

/** How a match would end. What is shown before a match is kept, once for the same records. */
export async function shownFor(ctx: Context, of: { event: string; match: string }): Promise<Shown> {
  const { forecast, keep } = await madeFor(ctx, of)
  const { matches } = await ctx.workspace.events.matches(of.event)
  const begun = await begunIn(ctx, of.event)
  if (begun(of.match) || matches.some(({ match }) => match.voids === of.match)) return { ...forecast, kept: null }
  const [kept] = await ctx.workspace.forecasts.keep(of.event, [keep])
  if (kept?.fresh) ctx.tell({ event: of.event, what: 'forecasts' })
  return { ...forecast, kept: kept ? { id: kept.forecast.id, madeAt: kept.forecast.madeAt } : null }
}

/**
 * Forecasts of matches that are still to come today, `most` of those that have none from what is known now, in the order of play.
 * Says which, and how many are left; none made and none left: all are there.
 */
export async function forecastToday(ctx: Context, { event, most }: { event: string; most: number }) {
  const of = await inputOf(ctx, event)
  const now = madeFrom(of, await resultsIn(ctx, event))
  const coming = comingToday(of.input.matches, await begunIn(ctx, event))
  const newest = new Map((await ctx.workspace.forecasts.of(event)).map((each) => [each.match, each]))
  const missing = coming
    .map(({ id }) => id)
    .filter((id) => newest.get(id)?.from !== now || newest.get(id)?.version !== forecastVersion)
  const made: { match: string; madeAt: string }[] = []
  for (const match of missing.slice(0, most)) {
    ctx.signal.throwIfAborted()
    const { kept } = await shownFor(ctx, { event, match })
    if (kept) made.push({ match, madeAt: kept.madeAt })
  }
  return { made, left: Math.max(0, missing.length - most), coming: coming.length }
}
