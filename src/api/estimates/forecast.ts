import type { MatchReport } from '../../model/match/types.ts'
import type { Match } from '../../model/scouting/index.ts'
import { matchInParts } from '../compute/matchInParts.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import { gameOf, inputOf } from './estimates.ts'

/** Matches that are played: the chance to win is then known to one in a hundred, which is less than what the records leave open. */
const replicates = 4000
/** Draws of what is believed of each team, one after the other from match to match. */
export const draws = 200
/** The same for everybody who asks, so that a forecast changes only with what is known. */
const seed = 1

export interface Forecast {
  match: string
  records: number
  neverSeen: string[]
  report: MatchReport
}

interface Kept {
  from: object
  byMatch: Map<string, Promise<Forecast>>
}

/** Forecasts from the same records, with what they follow from. */
const kept = new WeakMap<object, Kept>()

/** How a match would end. What was recorded of the match itself is left out, so that it can be asked for afterwards too. */
export async function forecastOf(
  ctx: Context,
  { event, match: id }: { event: string; match: string },
): Promise<Forecast> {
  const { input, known, log } = await inputOf(ctx, event)
  const match = input.matches.find((each) => each.id === id)
  if (!match)
    throw new ApiError({ code: 'notFound', message: `There is no match ${id} in this event`, path: ['match'] })
  let own = kept.get(log.of)
  if (own?.from !== known) {
    own = { from: known, byMatch: new Map() }
    kept.set(log.of, own)
  }
  const { byMatch } = own
  const before = byMatch.get(id)
  if (before) return before
  const made = play(ctx, { event, input, match })
  byMatch.set(id, made)
  // A failure is not kept.
  made.catch(() => byMatch.delete(id))
  return made
}

/** Plays a match with its robots as they were seen, its own records left out. */
export async function play(
  ctx: Context,
  { event, input, match }: { event: string; input: Awaited<ReturnType<typeof inputOf>>['input']; match: Match },
): Promise<Forecast> {
  const { event: body } = await gameOf(ctx, event)
  const watched = input.watched.filter(({ observation }) => observation.match !== match.id)
  const teams = [...match.red, ...match.blue].map(({ team }) => team)
  const all = [...new Set([...input.teams, ...teams])]
  // Whoever asked first may go: the others wait for the same answer.
  const { signal } = new AbortController()
  const options = await ctx.pool.run('observed', { input: { ...input, teams: all, watched }, teams, draws }, signal)
  const request = {
    game: input.game,
    level: body.level,
    ours: options.slice(0, match.red.length),
    theirs: options.slice(match.red.length),
    replicates,
    seed,
  }
  const report = await matchInParts(ctx.pool, request, { signal })
  const seen = new Set(watched.map(({ team }) => team))
  return { match: match.id, records: watched.length, neverSeen: teams.filter((team) => !seen.has(team)), report }
}
