import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { type Cell, nameFrom, type TableData } from '../../tables/table.ts'
import { words } from '../../words/catalogue.ts'
import { optionName } from '../../words/verdict.ts'
import type { Change, Means, Moved } from './changes.ts'

/** What moved and why, with all digits, as a table for a file. */
export function movedTable(decision: DecisionRecord, changes: readonly Change[], moved: Moved): TableData {
  const texts = words().decisions.again
  const { heads, units } = words().tables
  const { options, result } = decision.snapshot
  const ids = result.options.map(({ id }) => id)
  const row = (what: string, means: Means | null): Cell[] => [what, ...ids.map((id) => means?.[id] ?? null)]
  return {
    name: nameFrom(texts.caption),
    title: texts.caption,
    columns: [
      { name: 'what', title: heads.what, type: 'string' },
      ...ids.map((id, index) => ({
        name: `option_${index + 1}`,
        title: optionName(options, id),
        type: 'number' as const,
        unit: units.pointsPerMatch,
      })),
    ],
    rows: [
      row(texts.written, moved.written),
      row(texts.program, moved.program),
      ...changes.map((change, index) => row(texts.kinds[change.kind](change.name), moved.alone[index] ?? null)),
      row(texts.together, moved.together),
      row(texts.now, moved.now),
    ],
  }
}
