import type { MatchReport } from '../../model/match/types.ts'
import type { Match, Result } from '../../model/scouting/index.ts'
import { basisOf, forecastBody, forecastVersion } from '../../model/scouting/record/index.ts'
import type { NewForecast } from '../../store/types.ts'
import { matchInParts } from '../compute/matchInParts.ts'
import { ApiError } from '../errors.ts'
import { hashOf } from '../records/rows.ts'
import type { Context } from '../trpc.ts'
import { type Input, inputOf } from './estimates.ts'
import { type Robots, robotsBy, robotsOf, sharedRobots } from './robots.ts'

/** Matches that are played: the chance to win is then known to one in a hundred, which is less than what the records leave open. */
const replicates = 4000
/** The same for everybody who asks, so that a forecast changes only with what is known. */
const seed = 1

export interface Forecast {
  match: string
  records: number
  neverSeen: string[]
  report: MatchReport
}

/** A forecast, and what of it would be kept. */
export interface Made {
  forecast: Forecast
  keep: NewForecast
}

interface Worked {
  from: object
  byMatch: Map<string, Promise<Made>>
}

/** Forecasts from the same records, with what they follow from. */
const worked = new WeakMap<object, Worked>()

/** How a match would end. What was recorded of the match itself is left out, so that it can be asked for afterwards too. */
export async function madeFor(ctx: Context, { event, match: id }: { event: string; match: string }): Promise<Made> {
  const of = await inputOf(ctx, event)
  const match = of.input.matches.find((each) => each.id === id)
  if (!match)
    throw new ApiError({ code: 'notFound', message: `There is no match ${id} in this event`, path: ['match'] })
  let own = worked.get(of.log.of)
  if (own?.from !== of.known) {
    own = { from: of.known, byMatch: new Map() }
    worked.set(of.log.of, own)
  }
  const { byMatch } = own
  const before = byMatch.get(id)
  if (before) return before
  const made = play(ctx, { event, of, match, robots: robotsBy(of.known) })
  byMatch.set(id, made)
  // A failure is not kept.
  made.catch(() => byMatch.delete(id))
  return made
}

/** Plays a match with its robots as they were seen, its own records left out. */
export async function play(
  ctx: Context,
  { event, of, match, robots }: { event: string; of: Input; match: Match; robots: Robots },
): Promise<Made> {
  const { input, level } = of
  const watched = input.watched.filter(({ observation }) => observation.match !== match.id)
  const teams = [...match.red, ...match.blue].map(({ team }) => team)
  const options =
    watched.length === input.watched.length && teams.every((team) => input.teams.includes(team))
      ? await sharedRobots(ctx, { input, teams, robots })
      : await robotsOf(ctx, { ...input, watched }, teams)
  // Whoever asked first may go: the others wait for the same answer.
  const { signal } = new AbortController()
  const request = {
    game: input.game,
    level,
    ours: options.slice(0, match.red.length),
    theirs: options.slice(match.red.length),
    replicates,
    seed,
  }
  const report = await matchInParts(ctx.pool, request, { signal })
  const seen = new Set(watched.map(({ team }) => team))
  const neverSeen = teams.filter((team) => !seen.has(team))
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const body = forecastBody({ match, report, neverSeen, records: watched.length, matches: input.matches, results })
  return {
    forecast: { match: match.id, records: watched.length, neverSeen, report },
    keep: { match: match.id, from: madeFrom(of, results), version: forecastVersion, body },
  }
}

/** What was known when something was made, by the object that says it. */
const marks = new WeakMap<object, string>()

/**
 * SHA-256 of what forecasts of an event are made from now: records that count, changes and visits, rules, schedule and results. One
 * for all its coming matches, since of them nothing is recorded that had to be left out.
 */
export function madeFrom({ input, known, counting, rules, level, brought }: Input, results: readonly Result[]): string {
  const before = marks.get(known)
  if (before !== undefined) return before
  const records = counting.filter(({ row }) => row.kind === 'observation')
  const besides = known.inForce.filter(({ row }) => row.kind === 'change' || row.kind === 'visit')
  const all = [...records, ...besides].map(({ row, team }) => ({ id: row.id, team }))
  const { teams, matches, halfLife } = input
  const earlier = brought && {
    event: brought.from.body.id,
    discount: brought.earlier.discount,
    changed: brought.earlier.changed,
    matches: brought.earlier.matches,
    records: brought.records,
  }
  const mark = hashOf(
    basisOf({ rules, level, halfLife, teams, matches, records: all, results, ...(earlier && { earlier }) }),
  )
  marks.set(known, mark)
  return mark
}
