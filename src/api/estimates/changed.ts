import type { Changed } from '../../model/scouting/estimates/index.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'

/** What own records changed. Records of others, and such as do not count, are left out. */
export async function changedIn(
  ctx: Pick<Context, 'workspace' | 'pool' | 'signal' | 'who'>,
  { event, records }: { event: string; records: readonly string[] },
): Promise<Changed[]> {
  const { input, counting } = await inputOf(ctx, event)
  const { person } = ctx.who
  // While the server belongs to nobody, there is nobody whose records are not one's own.
  const own = new Set(counting.flatMap((each) => (person === null || each.person === person ? [each.row.id] : [])))
  const asked = [...new Set(records)].filter((id) => own.has(id))
  if (asked.length === 0) return []
  return ctx.pool.run('changed', { input, records: asked }, ctx.signal)
}
