import type { Result } from '../../../src/model/scouting/types.ts'
import type { AuditEntry } from '../../../src/store/types.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

/** The words for a name; the name itself where a newer server wrote it. */
export const told = (texts: { readonly [name: string]: string }, name: string): string => texts[name] ?? name

/** An id that this program made up. */
const id = /\b[\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12}\b/g

const isResult = (value: object): value is Result =>
  [value].every((each) => typeof (each as Partial<Result>).red?.points.total === 'number')

/** A detail in a few letters: of a long list its ends and how many there are, of a result its totals; empty: nothing to say. */
function valueText(value: unknown): string {
  if (value === null || value === undefined) return ''
  if (Array.isArray(value)) {
    const parts = value.map(valueText)
    return parts.length > 4 ? `${parts[0]} … ${parts.at(-1)} (${parts.length})` : parts.join(' ')
  }
  if (typeof value !== 'object') return String(value)
  if (isResult(value)) return `${plain(value.red.points.total)} : ${plain(value.blue.points.total)}`
  return Object.values(value).map(valueText).filter(Boolean).join(' ')
}

/** What a change was about; `named` gives people and devices their names. */
export function entryText(entry: Pick<AuditEntry, 'subject' | 'detail'>, named: (id: string) => string): string {
  const { fields } = words().log
  const details = Object.entries(entry.detail).flatMap(([key, value]) => {
    const text = valueText(value)
    return text === '' ? [] : [`${told(fields, key)}: ${text}`]
  })
  return [entry.subject, ...details].filter(Boolean).join(', ').replace(id, named)
}
