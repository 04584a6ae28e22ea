import type { MadeOfTeam } from '../../model/scouting/estimates/index.ts'
import { notFound } from '../documents/read.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'
import { keeper } from './keep.ts'

const kept = keeper<{ [team: string]: MadeOfTeam }>()

/** What the numbers of a team are made of: all teams at once, since what they share is most of the work. */
export async function madeOfTeam(
  ctx: Pick<Context, 'workspace' | 'pool'>,
  { event, team }: { event: string; team: string },
): Promise<MadeOfTeam> {
  const { input, known, log } = await inputOf(ctx, event)
  // Whoever asked first may go: the others wait for the same answer.
  const all = await kept(log.of, known, () => ctx.pool.run('made', input, new AbortController().signal))
  // Every object has names of its own, such as toString.
  const made = Object.hasOwn(all, team) ? all[team] : undefined
  if (!made) throw notFound('event', { id: `${event}/${team}` })
  return made
}
