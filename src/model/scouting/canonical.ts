type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json | undefined }

/**
 * JSON of a value by its content alone: keys in the order of their UTF-16 units, no spaces, fields without a value left
 * out. The same content gives the same text wherever it was written; the hash of a record is that of this text.
 * Numbers and texts are written as ECMAScript does. Source: the scheme of RFC 8785, which is this but for what JSON has no word for.
 */
export function canonicalJson(value: unknown): string {
  return write(value as Json)
}

/** A key as it is written, with the colon. */
interface Field {
  name: string
  head: string
}

/** Where one gets by the keys of an object, one after the other; `order` is that in which they are written. */
interface Way {
  next: Map<string, Way>
  order?: readonly Field[]
}

// Records have few kinds of objects, and to sort the keys of each anew takes longer than all the rest.
let ways: Way = { next: new Map() }
let count = 0
const mostWays = 5000

function orderOf(names: readonly string[]): readonly Field[] {
  let way = ways
  for (const name of names) {
    let next = way.next.get(name)
    if (next === undefined) {
      next = { next: new Map() }
      way.next.set(name, next)
      count += 1
    }
    way = next
  }
  way.order ??= [...names].sort().map((name) => ({ name, head: `${JSON.stringify(name)}:` }))
  const { order } = way
  if (count > mostWays) {
    ways = { next: new Map() }
    count = 0
  }
  return order
}

/** Of these no sign has to be written in another way. */
const plain = /^[ !#-[\]-~]*$/

export const writeText = (text: string): string => (plain.test(text) ? `"${text}"` : JSON.stringify(text))

function write(value: Json): string {
  if (typeof value === 'string') return writeText(value)
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : 'null'
  if (typeof value !== 'object' || value === null) return String(JSON.stringify(value))
  if (Array.isArray(value)) {
    let text = '['
    for (let index = 0; index < value.length; index++) text += (index === 0 ? '' : ',') + write(value[index]!)
    return `${text}]`
  }
  const fields = value as { readonly [key: string]: Json | undefined }
  let text = '{'
  for (const { name, head } of orderOf(Object.keys(fields))) {
    const field = fields[name]
    if (field !== undefined) text += (text.length === 1 ? '' : ',') + head + write(field)
  }
  return `${text}}`
}
