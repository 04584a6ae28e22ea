import type { Place } from '../data/difference.ts'
import { words } from './catalogue.ts'
import { plain } from './format.ts'

/** 'robot › score › gantry › Way 1 › aim › likely' for people: the place of a change, from the outside in. */
export const differenceWords = (place: Place): string =>
  place.length === 0
    ? words().format.whole
    : place.map((part) => (typeof part === 'number' ? words().format.member(part + 1) : part)).join(' › ')

/** A value of a document, short. */
export function valueWords(value: unknown): string {
  const texts = words().format
  if (value === undefined) return '–'
  if (value === null) return texts.none
  if (typeof value === 'number') return plain(value, 4)
  if (typeof value === 'string') return value
  if (typeof value === 'boolean') return value ? texts.yes : texts.no
  const text = JSON.stringify(value)
  return text.length > 90 ? `${text.slice(0, 90)} …` : text
}
