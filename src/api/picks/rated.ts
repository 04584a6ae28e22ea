import type { Game, Option } from '../../model/documents/types.ts'
import { type RatedTeam, ratedFrom } from '../../model/picks/scores/index.ts'
import { inputOf } from '../estimates/estimates.ts'
import { keeper } from '../estimates/keep.ts'
import { draws } from '../estimates/robots.ts'
import type { Context } from '../trpc.ts'

/** All teams of an event as pick order, seeds, playoffs and looks take them. */
export interface RatedEvent {
  game: Game
  level: string | undefined
  /** In the order of the event's document. */
  teams: RatedTeam[]
  /** Records that count behind it. */
  records: number
}

const kept = keeper<RatedEvent>()

/** Teams rated by all that is known of an event now, worked out once for what is known, however many ask. */
export async function ratedIn(ctx: Pick<Context, 'workspace' | 'pool'>, event: string): Promise<RatedEvent> {
  const { input, known, log, level } = await inputOf(ctx, event)
  const { game, teams } = input
  return kept(log.of, known, async () => {
    // Whoever asked first may go: the others wait for the same answer.
    const { signal } = new AbortController()
    const [ratings, options] = await Promise.all([
      ctx.pool.run('ratings', { input, teams }, signal),
      ctx.pool.run('observed', { input, teams, draws }, signal),
    ])
    const rated = teams.map((team, k) => ratedFrom(team, { rating: ratings[k]!, option: options[k] as Option }))
    return { game, level, teams: rated, records: input.watched.length }
  })
}
