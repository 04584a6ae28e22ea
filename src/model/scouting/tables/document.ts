import type { CellValue, Field, Line } from './types.ts'

type Inner = { [key: string]: unknown }

const isInner = (value: unknown): value is Inner => typeof value === 'object' && value !== null && !Array.isArray(value)

const at = (document: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((part, key) => (isInner(part) ? part[key] : undefined), document)

/** The cells of a document, one for each field. */
export const cellsOf = (fields: readonly Field[], document: unknown): CellValue[] =>
  fields.map(({ path, presence }) => {
    const value = at(document, path)
    if (presence) return value === undefined ? null : true
    return (value ?? null) as CellValue
  })

function put(document: Inner, path: readonly string[], value: unknown): void {
  let part = document
  for (const key of path.slice(0, -1)) {
    if (part[key] === undefined) part[key] = {}
    part = part[key] as Inner
  }
  part[path.at(-1)!] = value
}

/** The document of a line: what is empty is left out, but null where a field says so. */
export function documentOf(fields: readonly Field[], { values }: Line): Inner {
  const document: Inner = {}
  for (const { name, path, presence } of fields) {
    const value = values[name] ?? null
    if (presence) {
      if (value === true && at(document, path) === undefined) put(document, path, {})
    } else if (value !== null) put(document, path, value)
  }
  for (const { name, path, nullable } of fields) {
    const parent = path.length === 1 ? document : at(document, path.slice(0, -1))
    if (nullable && (values[name] ?? null) === null && isInner(parent)) parent[path.at(-1)!] = null
  }
  return document
}

/** The field at a path, or the one whose path it leads into or comes from. */
export function fieldAt(fields: readonly Field[], path: readonly (string | number)[]): Field | undefined {
  const keys = path.map(String)
  const within = (long: readonly string[], short: readonly string[]) => short.every((key, index) => long[index] === key)
  return (
    fields.find((field) => !field.presence && within(keys, field.path)) ??
    fields.find((field) => within(field.path, keys))
  )
}
