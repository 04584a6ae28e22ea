import type { Place } from '../data/difference.ts'
import { plain } from './format.ts'

/** 'robot › score › gantry › Way 1 › aim › likely' for people: the place of a change, from the outside in. */
export const differenceWords = (place: Place): string =>
  place.length === 0
    ? 'the whole document'
    : place.map((part) => (typeof part === 'number' ? `no. ${part + 1}` : part)).join(' › ')

/** A value of a document, short. */
export function valueWords(value: unknown): string {
  if (value === undefined) return '–'
  if (value === null) return 'none'
  if (typeof value === 'number') return plain(value, 4)
  if (typeof value === 'string') return value
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  const text = JSON.stringify(value)
  return text.length > 90 ? `${text.slice(0, 90)} …` : text
}
