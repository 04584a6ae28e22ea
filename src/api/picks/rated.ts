import type { Game } from '../../model/documents/types.ts'
import {
  type PackedRating,
  packRating,
  type RatedTeam,
  type Rating,
  ratedFrom,
} from '../../model/picks/scores/index.ts'
import { inputOf } from '../estimates/estimates.ts'
import { madeFrom } from '../estimates/forecast.ts'
import { keeper } from '../estimates/keep.ts'
import { robotsKept } from '../estimates/robots.ts'
import type { Context } from '../trpc.ts'

type Asking = Pick<Context, 'workspace' | 'pool'>

/** All teams of an event as pick order, seeds, playoffs and looks take them. */
export interface RatedEvent {
  game: Game
  level: string | undefined
  /** In the order of the event's document. */
  teams: RatedTeam[]
  /** Observations that count behind it. */
  records: number
}

const kept = { ratings: keeper<Rating[]>(), rated: keeper<RatedEvent>(), packed: keeper<Packed>() }

type Packed = { [team: string]: PackedRating }

/** What is expected of each team of an event, in the order of its document; worked out once for what is known, however many ask. */
async function ratingsIn(ctx: Asking, event: string): Promise<Rating[]> {
  const { input, known, log } = await inputOf(ctx, event)
  const { teams } = input
  // Whoever asked first may go: the others wait for the same answer.
  return kept.ratings(log.of, known, () => ctx.pool.run('ratings', { input, teams }, new AbortController().signal))
}

/** Teams rated by all that is known of an event now, with their robots; kept for as long as nothing new is known. */
export async function ratedIn(ctx: Asking, event: string): Promise<RatedEvent> {
  const of = await inputOf(ctx, event)
  const { input, known, log, level } = of
  const { game, teams } = input
  return kept.rated(log.of, known, async () => {
    const [ratings, options] = await Promise.all([ratingsIn(ctx, event), robotsKept(ctx, of, teams)])
    const rated = teams.map((team, k) => ratedFrom(team, { rating: ratings[k]!, option: options[k]! }))
    return { game, level, teams: rated, records: input.watched.length }
  })
}

/** The same ratings for a browser that computes by itself; only their mark where it has them already. */
export async function packedRatings(
  ctx: Asking,
  { event, since }: { event: string; since?: string | undefined },
): Promise<{ mark: string; ratings: Packed | null }> {
  const of = await inputOf(ctx, event)
  const { input, known, log } = of
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const mark = madeFrom(of, results)
  if (since === mark) return { mark, ratings: null }
  const ratings = await kept.packed(log.of, known, async () => {
    const each = await ratingsIn(ctx, event)
    return Object.fromEntries(input.teams.map((team, k) => [team, packRating(each[k]!)]))
  })
  return { mark, ratings }
}
