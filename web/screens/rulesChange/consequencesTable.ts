import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { type Cell, nameFrom, type TableData } from '../../tables/table.ts'
import { words } from '../../words/catalogue.ts'
import { optionName } from '../../words/verdict.ts'
import type { Consequence } from './flips.ts'

/** What other rules do to each decision, with all digits, as a table for a file. */
export function consequencesTable(
  found: readonly { decision: { body: DecisionRecord }; result: Consequence | null }[],
  title: string,
): TableData {
  const { heads, units } = words().tables
  const text = (name: string, heading: string) => ({ name, title: heading, type: 'string' as const })
  const points = (name: string, heading: string) => ({
    name,
    title: heading,
    type: 'number' as const,
    unit: units.pointsPerMatch,
  })
  return {
    name: nameFrom(title),
    title,
    columns: [
      text('decision', heads.decision),
      text('best_then', heads.bestThen),
      points('lead_then', heads.leadThen),
      text('best_now', heads.bestNow),
      points('lead_now', heads.leadNow),
      { name: 'flips', title: heads.flips, type: 'boolean' },
      points('chosen_behind', heads.behind),
    ],
    rows: found.map(({ decision: { body }, result }): Cell[] => {
      if (!result) return [body.name, null, null, null, null, null, null]
      const name = (id: string) => optionName(body.snapshot.options, id)
      const { before, after, flips, chosenBehind } = result
      return [body.name, name(before.best), before.lead, name(after.best), after.lead, flips, chosenBehind]
    }),
  }
}
