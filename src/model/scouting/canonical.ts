type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json | undefined }

/**
 * JSON of a value by its content alone: keys in the order of their UTF-16 units, no spaces, fields without a value left
 * out. The same content gives the same text wherever it was written; the hash of a record is that of this text.
 * Numbers and texts are written as ECMAScript does. Source: the scheme of RFC 8785, which is this but for what JSON has no word for.
 */
export function canonicalJson(value: unknown): string {
  return write(value as Json)
}

function write(value: Json): string {
  if (typeof value === 'string') return JSON.stringify(value)
  if (typeof value !== 'object' || value === null) return String(JSON.stringify(value))
  if (Array.isArray(value)) {
    let text = '['
    for (let index = 0; index < value.length; index++) text += (index === 0 ? '' : ',') + write(value[index]!)
    return `${text}]`
  }
  const fields = value as { readonly [key: string]: Json | undefined }
  let text = ''
  for (const key of Object.keys(fields).sort()) {
    const field = fields[key]
    if (field !== undefined) text += `${text === '' ? '' : ','}${JSON.stringify(key)}:${write(field)}`
  }
  return `{${text}}`
}
