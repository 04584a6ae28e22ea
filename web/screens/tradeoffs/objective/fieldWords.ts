import type { StatedField } from '../../../../src/model/documents/records.ts'
import type { Option } from '../../../../src/model/documents/types.ts'
import type { StatedReport } from '../../../../src/model/match/stated/types.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'

/** Who plays with and against each option, how often, and at which level. */
export function fieldWords(field: StatedField, { replicates }: Pick<StatedReport, 'replicates'>): string {
  const text = words().objective
  const names = (options: readonly Option[]) => options.map(({ name }) => text.named(name)).join(', ')
  return [
    text.who({
      partners: names(field.partners),
      opponents: names(field.opponents),
      matches: plain(replicates),
    }),
    ...(field.level === null ? [] : [text.atLevel(field.level)]),
  ].join(' ')
}
