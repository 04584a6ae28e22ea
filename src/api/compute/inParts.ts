import { beliefNeedsFineGrid, beliefSize } from '../../model/compare/index.ts'
import type { CompareReport, CompareRequest } from '../../model/compare/types.ts'
import type { Part } from './part.ts'
import type { Pool } from './pool.ts'

/** A belief takes at most so many threads, so that others get their turn. */
const mostShares = 2

/** The comparison, the belief's draws on the coarse grid and on the fine one, and their summary. */
const steps = 4

/**
 * A comparison, and then its belief in parts that threads share. Parts give the same belief as one piece would. Where one
 * part fails, the others are stopped.
 */
export async function compareInParts(
  pool: Pool,
  request: CompareRequest,
  { signal, progress }: Part,
): Promise<CompareReport> {
  const { belief: asked, ...rest } = request
  if (!asked) return pool.run('compare', request, signal)
  const failed = new AbortController()
  const either = AbortSignal.any([signal, failed.signal])
  try {
    const report = await pool.run('compare', rest, either)
    progress?.(1, steps)
    const coarse = await draws(pool, request, 0.25, either)
    progress?.(2, steps)
    const parts = beliefNeedsFineGrid(coarse) ? await draws(pool, request, 0.1, either) : coarse
    progress?.(3, steps)
    return { ...report, belief: await pool.run('summary', { request, parts }, either) }
  } catch (error) {
    failed.abort()
    throw error
  }
}

function draws(pool: Pool, request: CompareRequest, step: 0.25 | 0.1, signal: AbortSignal) {
  const shares = Math.min(mostShares, pool.threads)
  const size = beliefSize / shares
  const from = Array.from({ length: shares }, (_, share) => share * size)
  return Promise.all(from.map((start) => pool.run('draws', { request, from: start, to: start + size, step }, signal)))
}
