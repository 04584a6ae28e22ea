import type { SideBySide } from '../../model/scouting/estimates/index.ts'
import { notFound } from '../documents/read.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'

/** Some teams of an event beside each other. */
export async function sideBySideIn(
  ctx: Pick<Context, 'workspace' | 'pool' | 'signal'>,
  { event, teams: listed }: { event: string; teams: string },
): Promise<SideBySide> {
  const { input } = await inputOf(ctx, event)
  const teams = [...new Set(listed.split(','))]
  const unknown = teams.find((team) => !input.teams.includes(team))
  if (unknown !== undefined) throw notFound('event', { id: `${event}/${unknown}` })
  return ctx.pool.run('sideBySide', { input, teams }, ctx.signal)
}
