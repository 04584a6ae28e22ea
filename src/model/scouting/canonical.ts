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

/** In which order the keys of an object are written, by the keys in the order in which it has them. Records have few kinds of objects. */
const orders = new Map<string, readonly Field[]>()
const mostOrders = 1000

function orderOf(names: readonly string[]): readonly Field[] {
  const key = names.join('\u0000')
  const known = orders.get(key)
  // A name with that sign in it looks like two; their number tells them apart, and such an order is not kept.
  if (known !== undefined && known.length === names.length) return known
  const order = [...names].sort().map((name) => ({ name, head: `${JSON.stringify(name)}:` }))
  if (orders.size >= mostOrders) orders.clear()
  if (!names.some((name) => name.includes('\u0000'))) orders.set(key, order)
  return order
}

/** Of these no sign has to be written in another way. */
const plain = /^[ !#-[\]-~]*$/

const writeText = (text: string): string => (plain.test(text) ? `"${text}"` : JSON.stringify(text))

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
