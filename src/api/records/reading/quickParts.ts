import { writeText } from '../../../model/scouting/canonical.ts'
import { taken } from '../../contracts/primitives.ts'

/** A value as canonical JSON where it is surely allowed; undefined: its contract has to look. */
export type Quick = (value: unknown) => string | undefined

export const one =
  (only: number): Quick =>
  (value) =>
    value === only ? String(only) : undefined

export const boolean: Quick = (value) => (typeof value === 'boolean' ? String(value) : undefined)

export const measure =
  (low: number, high: number): Quick =>
  (value) =>
    typeof value === 'number' && value >= low && value <= high ? `${value}` : undefined

export const count =
  (low: number, high: number): Quick =>
  (value) =>
    Number.isInteger(value) && (value as number) >= low && (value as number) <= high ? `${value}` : undefined

export const oneOf = (names: readonly string[]): Quick => {
  const written = new Map<unknown, string>(names.map((name) => [name, JSON.stringify(name)]))
  return (value) => written.get(value)
}

/** Of a pattern that allows no sign which JSON writes in another way. */
export const matching =
  (pattern: RegExp): Quick =>
  (value) =>
    typeof value === 'string' && pattern.test(value) ? `"${value}"` : undefined

export const uuid = matching(/^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)

export const textUpTo =
  (most: number): Quick =>
  (value) =>
    typeof value === 'string' && value.length <= most ? writeText(value) : undefined

// Matches, goals, scouts and devices are few, and each is named in hundreds of rows.
const ids = new Map<unknown, string>()
const mostIds = 5000
const plainId = /^[A-Za-z0-9][A-Za-z0-9 ._:-]{0,99}$/

export const id: Quick = (value) => {
  const known = ids.get(value)
  if (known !== undefined) return known
  if (typeof value !== 'string' || !plainId.test(value) || taken.has(value)) return undefined
  if (ids.size >= mostIds) ids.clear()
  const text = `"${value}"`
  ids.set(value, text)
  return text
}

export const nullable =
  (quick: Quick): Quick =>
  (value) =>
    value === null ? 'null' : quick(value)

export const listOf =
  (quick: Quick, most: number): Quick =>
  (value) => {
    if (!Array.isArray(value) || value.length > most) return undefined
    let text = '['
    for (let index = 0; index < value.length; index++) {
      const item = quick(value[index])
      if (item === undefined) return undefined
      text += index === 0 ? item : `,${item}`
    }
    return `${text}]`
  }

/** An object with these fields and no others, written in the order of their names. */
export function fields(required: { readonly [name: string]: Quick }, optional: typeof required = {}): Quick {
  const all = Object.entries({ ...required, ...optional })
    .map(([name, quick]) => ({ name, quick, head: `"${name}":`, needed: Object.hasOwn(required, name) }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined
    const object = value as { readonly [name: string]: unknown }
    let text = ''
    let found = 0
    for (const { name, quick, head, needed } of all) {
      const field = object[name]
      if (field === undefined) {
        if (needed) return undefined
        continue
      }
      const written = quick(field)
      if (written === undefined) return undefined
      text += (found === 0 ? head : `,${head}`) + written
      found++
    }
    return found === Object.keys(object).length ? `{${text}}` : undefined
  }
}
