import type { CompareReport, CompareRequest } from '../../model/compare/types.ts'
import type { Option } from '../../model/documents/types.ts'
import { compareInParts } from './inParts.ts'
import { matchInParts } from './matchInParts.ts'
import type { Part } from './part.ts'
import type { Pool } from './pool.ts'

/** Partners and opponents with whom each option plays whole matches. */
export interface StatedField {
  field: { partners: readonly Option[]; opponents: readonly Option[] }
  level?: string | undefined
  replicates: number
  seed: number
}

/**
 * A comparison, and each option's matches with the same partners against the same opponents. All options meet the same luck,
 * so that what sets them apart is not chance.
 */
export async function compareInField(
  pool: Pool,
  request: CompareRequest,
  { stated, part }: { stated: StatedField; part: Part },
): Promise<CompareReport> {
  const { game } = request
  const { field, ...rest } = stated
  const { signal, progress } = part
  const report = await compareInParts(pool, request, { signal })
  const total = request.options.length * stated.replicates
  for (const [index, option] of request.options.entries()) {
    const ours = [option, ...field.partners]
    const { win, rankingPoints } = await matchInParts(
      pool,
      { game, ours, theirs: field.opponents, ...rest },
      { signal, progress: (done) => progress?.(index * stated.replicates + done, total) },
    )
    const { mean, standardError } = rankingPoints.ours
    Object.assign(report.options[index]!, { win, rankingPoints: { mean, standardError } })
  }
  return report
}
