import type { EventRecord } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'

/** How soon own matches are forgotten at an event, in a sentence beside numbers. */
export function halfLifeSaid({ halfLife }: Pick<EventRecord, 'halfLife'>): string {
  const texts = words().made
  return halfLife === undefined ? texts.noHalfLife : texts.halfLife(plain(halfLife, 1))
}
