import type { CompareReport, CompareRequest } from '../../model/compare/types.ts'
import type { Option } from '../../model/documents/types.ts'
import { groundOf } from '../../model/match/ground.ts'
import { blockSize } from '../../model/match/precision.ts'
import { blocksOf } from '../../model/match/run.ts'
import { addStated, noSums, type StatedRequest, type StatedSums, statedReport } from '../../model/match/stated/index.ts'
import { compareInParts } from './inParts.ts'
import type { Part } from './part.ts'
import type { Pool } from './pool.ts'

/** Partners and opponents with whom each option plays whole matches. */
export interface StatedField {
  field: { partners: readonly Option[]; opponents: readonly Option[] }
  level?: string | undefined
  replicates: number
  seed: number
}

/** A comparison takes at most so many threads, so that others get their turn. */
const mostShares = 2

/** Blocks of one part: some tenths of a second's work for each option. */
const blocksAtOnce = 5

/**
 * A comparison, and each option's matches with the same partners against the same opponents. All options meet the same luck,
 * so that what sets them apart is not chance.
 */
export async function compareInField(
  pool: Pool,
  request: CompareRequest,
  { stated, part }: { stated: StatedField; part: Part },
): Promise<CompareReport> {
  const { game, options } = request
  const { field, ...rest } = stated
  const { signal } = part
  const report = await compareInParts(pool, request, { signal })
  const asked: StatedRequest = { game, options, ...field, ...rest }
  const ground = groundOf(game)
  const sums = noSums(asked, ground)
  for (const block of await blocksInParts(pool, asked, part)) addStated(sums, block)
  const found = statedReport(asked, ground, sums)
  for (const [index, { won, rankingPoints }] of found.options.entries())
    Object.assign(report.options[index]!, { win: won, rankingPoints })
  return { ...report, field: found }
}

/** The blocks in their order, whichever thread played them; its progress is matches. Where one part fails, the others are stopped. */
async function blocksInParts(pool: Pool, request: StatedRequest, { signal, progress }: Part): Promise<StatedSums[]> {
  const total = blocksOf(request.replicates)
  const played: StatedSums[] = []
  const failed = new AbortController()
  const either = AbortSignal.any([signal, failed.signal])
  let [next, done] = [0, 0]
  const share = async () => {
    while (next < total) {
      const from = next
      next = Math.min(total, from + blocksAtOnce)
      const blocks = await pool.run('stated', { request, from, to: next }, either)
      for (const [k, sums] of blocks.entries()) played[from + k] = sums
      done += blocks.length
      progress?.(Math.min(done * blockSize, request.replicates), request.replicates)
    }
  }
  try {
    await Promise.all(Array.from({ length: Math.min(mostShares, pool.threads, total) }, share))
  } catch (error) {
    failed.abort()
    throw error
  }
  return played
}
