import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'
import type { Parts } from './useParts.ts'

/** Whether these are the revisions that the comparison names. */
export const matching = (record: ComparisonRecord, parts: Parts): boolean =>
  record.game.id === parts.game.id &&
  record.game.revision === parts.game.revision &&
  record.options.length === parts.options.length &&
  record.options.every(
    ({ option, design }, index) =>
      option.id === parts.options[index]!.option.id &&
      option.revision === parts.options[index]!.option.revision &&
      design.revision === parts.options[index]!.design.revision,
  )

/** Which documents have a newer revision than the comparison names, in words; null where none has. `field`: names from its field. */
export function newer(record: ComparisonRecord, newest: Parts, field: readonly string[] = []): string | null {
  const names = [
    ...(newest.game.revision > record.game.revision ? [newest.game.name] : []),
    ...newest.options.flatMap(({ option, design }, index) => {
      const named = record.options[index]
      if (!named) return []
      return [
        ...(option.revision > named.option.revision ? [option.name] : []),
        ...(design.revision > named.design.revision ? [design.name] : []),
      ]
    }),
    ...field,
  ]
  return names.length > 0 ? words().tradeoffs.newer([...new Set(names)].join(', ')) : null
}

/** The comparison of the newest revisions. */
export const withNewest = (
  record: ComparisonRecord,
  newest: Parts,
  field: ComparisonRecord['field'] | null = null,
): ComparisonRecord => ({
  ...record,
  ...(field ? { field } : {}),
  game: { id: newest.game.id, revision: newest.game.revision },
  options: newest.options.map(({ option, design }) => ({
    option: { id: option.id, revision: option.revision },
    design: { id: design.id, revision: design.revision },
  })),
})
