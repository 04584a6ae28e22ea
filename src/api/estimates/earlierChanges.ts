import type { EarlierChange } from '../../model/scouting/estimates/index.ts'
import { notFound, read } from '../documents/read.ts'
import type { Context } from '../trpc.ts'
import { type Chosen, earlierOf } from './earlier.ts'
import { inputOf } from './estimates.ts'

type Asking = Pick<Context, 'workspace' | 'pool' | 'signal'>

/** Events of the same game, each with how much it says of the teams of this one. */
export async function earlierIn(ctx: Asking, event: string) {
  const own = await read(ctx.workspace, 'event', { id: event })
  if (!own) throw notFound('event', { id: event })
  const here = new Set(own.body.teams.map(({ team }) => team))
  const offered = []
  for (const { id } of await ctx.workspace.list('event')) {
    const brought = await earlierOf(ctx, { event, game: own.body.game, chosen: { event: id, discount: 1 } })
    if (!brought) continue
    const { name, startsOn = null } = brought.from.body
    const seen = brought.earlier.watched.filter(({ team }) => here.has(team))
    const [teams, matches] = [seen.map(({ team }) => team), seen.map(({ observation }) => observation.match)]
    offered.push({ event: id, name, startsOn, teams: new Set(teams).size, matches: new Set(matches).size })
  }
  return offered.sort((a, b) => b.teams - a.teams || b.matches - a.matches)
}

/** What is believed of all teams with an earlier event, and without any; that which counts now stays as it is. */
export async function withEarlier(
  ctx: Asking,
  { event, earlier: id, ...how }: { event: string; earlier: string } & Omit<Chosen, 'event'>,
): Promise<{ teams: EarlierChange[] }> {
  const { input, body } = await inputOf(ctx, event)
  const brought = await earlierOf(ctx, { event, game: body.game, chosen: { event: id, ...how } })
  if (!brought) throw notFound('event', { id })
  return { teams: await ctx.pool.run('earlierChanges', { input, earlier: brought.earlier }, ctx.signal) }
}
