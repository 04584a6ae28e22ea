import { type Calls, recordOf } from '../../model/scouting/record/index.ts'
import type { Input } from '../estimates/estimates.ts'
import type { Context } from '../trpc.ts'

/** What was judged last of each event whose records are kept, with what it follows from. */
const judged = new WeakMap<object, { from: string; calls: Calls[] }>()

/** How often forecasts came true; judged once for the same forecasts, results and schedule, since many ask. */
export async function callsOf(
  { workspace }: Pick<Context, 'workspace'>,
  { event, of: { input, known, log } }: { event: string; of: Input },
): Promise<Calls[]> {
  const forecasts = await workspace.forecasts.of(event)
  const results = await workspace.events.standing(event)
  const from = JSON.stringify([known.at.frame, forecasts.map(({ id }) => id), results])
  const before = judged.get(log.of)
  if (before?.from === from) return before.calls
  const { judgement } = recordOf({ forecasts, matches: input.matches, results })
  const calls = judgement?.calls ?? []
  judged.set(log.of, { from, calls })
  return calls
}
