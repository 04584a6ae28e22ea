import { type Broken, brokenIn } from '../../model/briefing/index.ts'
import { inputOf } from '../estimates/estimates.ts'
import type { Context } from '../trpc.ts'

/** What scouts saw break or stop of a robot. */
export async function brokenOf(
  ctx: Pick<Context, 'workspace'>,
  { event, team }: { event: string; team: string },
): Promise<Broken[]> {
  const { input } = await inputOf(ctx, event)
  const own = input.watched.flatMap((each) => (each.team === team ? [each.observation] : []))
  return brokenIn(input.matches, own)
}
