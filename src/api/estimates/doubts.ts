import type { Doubt } from '../../model/scouting/doubts/index.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'

/** The last answer of each event whose records are kept, with what it follows from. */
const worked = new WeakMap<object, { from: object; doubts: Promise<Doubt[]> }>()

/** Records of an event that a lead should look at, worked out once for what is known of it. */
export async function doubtsIn(ctx: Pick<Context, 'workspace' | 'pool'>, event: string): Promise<Doubt[]> {
  const { input, known, log } = await inputOf(ctx, event)
  const before = worked.get(log.of)
  if (before?.from === known) return before.doubts
  const stored = await ctx.workspace.events.results(event)
  const results = stored.flatMap(({ result }) => result ?? [])
  const { game, matches, watched } = input
  // Whoever asked first may go: the others wait for the same answer.
  const { signal } = new AbortController()
  const doubts = ctx.pool.run('doubts', { game, matches, results, watched }, signal)
  worked.set(log.of, { from: known, doubts })
  // A failure is not kept.
  doubts.catch(() => worked.delete(log.of))
  return doubts
}
