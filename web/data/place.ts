import type { Place } from './difference.ts'

/** The value at a place of a document, by keys and indices; undefined where there is none. */
export function valueAt(document: unknown, place: Place): unknown {
  let value: unknown = document
  for (const key of place) {
    if (typeof value !== 'object' || value === null) return undefined
    value = (value as { [key: string]: unknown })[key as string]
  }
  return value
}

/** A copy of the document with another value at a place; everything else is shared. `undefined` takes the key away. */
export function withValueAt<T>(document: T, place: Place, value: unknown): T {
  const [key, ...rest] = place
  if (key === undefined) return value as T
  if (Array.isArray(document)) {
    const copy = [...document]
    copy[key as number] = withValueAt(copy[key as number], rest, value)
    return copy as T
  }
  const plain = (document ?? {}) as { [key: string]: unknown }
  const inner = withValueAt(plain[key as string], rest, value)
  if (inner === undefined) {
    const { [key as string]: _, ...others } = plain
    return others as T
  }
  return { ...plain, [key as string]: inner } as T
}
