/** Where in a document: keys, indices, or ids of list members. */
export type Place = readonly (string | number)[]

export interface Difference {
  place: Place
  /** undefined: not there. */
  before: unknown
  after: unknown
}

type Plain = { [key: string]: unknown }

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null && !Array.isArray(value)

/** Lists whose members all have an id are compared member by member; other lists as a whole. */
const byId = (value: unknown): value is ({ id: string } & Plain)[] =>
  Array.isArray(value) && value.every((member) => isPlain(member) && typeof member['id'] === 'string')

export const same = (a: unknown, b: unknown): boolean => {
  if (Object.is(a, b)) return true
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((member, index) => same(member, b[index]))
  if (isPlain(a) && isPlain(b)) {
    const keys = new Set([...Object.keys(a), ...Object.keys(b)])
    return [...keys].every((key) => same(a[key], b[key]))
  }
  return false
}

const asMap = (list: { id: string }[]): Plain => Object.fromEntries(list.map((member) => [member.id, member]))

/** What differs between two documents, as the smallest parts that do. */
export function differences(before: unknown, after: unknown, place: Place = []): Difference[] {
  if (same(before, after)) return []
  if (isPlain(before) && isPlain(after)) {
    const keys = new Set([...Object.keys(before), ...Object.keys(after)])
    return [...keys].flatMap((key) => differences(before[key], after[key], [...place, key]))
  }
  if (byId(before) && byId(after)) {
    const parts = differences(asMap(before), asMap(after), place)
    // The same members in another order: only the whole list says that.
    return parts.length > 0 ? parts : [{ place, before, after }]
  }
  return [{ place, before, after }]
}

/** Three-way merge: what only one side changed is taken from it; where both did, `mine` stays and the place is named. */
export function merge<T>(base: T, mine: T, theirs: T): { merged: T; both: Place[] } {
  const both: Place[] = []
  return { merged: mergeAt(base, mine, theirs, [], both) as T, both }
}

function mergeAt(base: unknown, mine: unknown, theirs: unknown, place: Place, both: Place[]): unknown {
  if (same(mine, theirs) || same(theirs, base)) return mine
  if (same(mine, base)) return theirs
  if (isPlain(mine) && isPlain(theirs)) {
    const parts = isPlain(base) ? base : {}
    const keys = new Set([...Object.keys(mine), ...Object.keys(theirs)])
    const entries = [...keys].map(
      (key) => [key, mergeAt(parts[key], mine[key], theirs[key], [...place, key], both)] as const,
    )
    return Object.fromEntries(entries.filter(([, value]) => value !== undefined))
  }
  if (byId(mine) && byId(theirs)) {
    const parts = byId(base) ? asMap(base) : {}
    const [ours, others] = [asMap(mine), asMap(theirs)]
    const ids = [...new Set([...mine, ...theirs].map((member) => member.id))]
    return ids
      .map((id) => mergeAt(parts[id], ours[id], others[id], [...place, id], both))
      .filter((member) => member !== undefined)
  }
  both.push(place)
  return mine
}
