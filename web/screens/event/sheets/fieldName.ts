import { words } from '../../../words/catalogue.ts'
import type { SheetField } from './fields.ts'

/** What stands beside a box, on paper and on the keying screen alike. */
export function fieldName(field: SheetField): string {
  const texts = words().sheets.fields
  switch (field.kind) {
    case 'count':
      return texts.count[field.what](field.goalName, texts.period[field.period])
    case 'finish':
      return texts.finish[field.what]
    case 'foul':
      return texts.foul[field.what]
    default:
      return texts[field.kind]
  }
}
