import type { QuickSheetRecord, StrengthName } from '../../../src/model/documents/quickSheet.ts'
import { type Ranked, strengthNames } from '../../../src/model/sheet/index.ts'
import { type Cell, nameFrom, type TableData } from '../../tables/table.ts'
import { words } from '../../words/catalogue.ts'

type ByStrength<T> = { readonly [name in StrengthName]: readonly T[] }

/** The ranking with all digits, as a table for a file: points and rank of each way at each strength. */
export function rankingTable(
  sheet: QuickSheetRecord,
  orders: ByStrength<string>,
  ranked: ByStrength<Ranked>,
  title: string,
): TableData {
  const { heads, units } = words().tables
  const { names } = words().quickSheet.strength
  return {
    name: nameFrom(title),
    title,
    columns: [
      { name: 'way', title: heads.way, type: 'string' },
      ...strengthNames.flatMap((strength) => [
        {
          name: `points_${strength}`,
          title: heads.pointsAt(names[strength]),
          type: 'number' as const,
          unit: units.pointsPerMatch,
        },
        { name: `rank_${strength}`, title: heads.rank(names[strength]), type: 'integer' as const },
      ]),
    ],
    rows: orders.middling.map((id): Cell[] => [
      sheet.ways.find((way) => way.id === id)?.name ?? id,
      ...strengthNames.flatMap((strength): Cell[] => {
        const own = ranked[strength].find((way) => way.id === id)
        return own ? [own.points, orders[strength].indexOf(id) + 1] : [null, null]
      }),
    ]),
  }
}

/** Points of each way under each set of rules, with all digits, as a table for a file. */
export function readingsTable(of: {
  title: string
  way: string
  heads: string[]
  ways: { id: string; name: string }[]
  columns: (readonly Ranked[])[]
}): TableData {
  const unit = words().tables.units.pointsPerMatch
  return {
    name: nameFrom(of.title),
    title: of.title,
    columns: [
      { name: 'way', title: of.way, type: 'string' },
      ...of.heads.map((title, index) => ({ name: `rules_${index + 1}`, title, type: 'number' as const, unit })),
    ],
    rows: of.ways.map(({ id, name }) => [
      name,
      ...of.columns.map((column) => column.find((way) => way.id === id)?.points ?? null),
    ]),
  }
}
