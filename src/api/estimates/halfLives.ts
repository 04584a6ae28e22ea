import type { HalfLifeEvidence } from '../../model/scouting/estimates/index.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'
import { keeper } from './keep.ts'

const kept = keeper<HalfLifeEvidence[]>()

/** How well each half-life would have forecast every next match of the event. */
export async function halfLivesIn(
  ctx: Pick<Context, 'workspace' | 'pool'>,
  event: string,
): Promise<HalfLifeEvidence[]> {
  const { input, known, log } = await inputOf(ctx, event)
  // Whoever asked first may go: the others wait for the same answer.
  return kept(log.of, known, () => ctx.pool.run('halfLives', input, new AbortController().signal))
}
