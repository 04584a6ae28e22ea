import { oddTexts } from './mutations.ts'

/** As much of JSON Schema as the description of the API uses. */
export interface Schema {
  $ref?: string
  type?: string
  const?: unknown
  enum?: unknown[]
  anyOf?: Schema[]
  oneOf?: Schema[]
  pattern?: string
  minLength?: number
  maxLength?: number
  minimum?: number
  maximum?: number
  exclusiveMinimum?: number
  multipleOf?: number
  items?: Schema
  prefixItems?: Schema[]
  minItems?: number
  maxItems?: number
  properties?: { [name: string]: Schema }
  required?: string[]
  propertyNames?: Schema
  additionalProperties?: Schema | boolean
}

export interface Sampler {
  /** A value that the schema takes, as far as schemas tell: what fits to what is not in them. */
  value(schema: Schema, name?: string): unknown
  pick<T>(of: readonly T[]): T
}

/** xorshift32 (Marsaglia 2003): enough to choose by, and the same for the same seed. */
function chance(seed: number): () => number {
  let state = seed | 1
  return () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) / 2 ** 32
  }
}

const deepest = 9

/** What texts are taken from, where they fit: those of fields of a name, and those of any. */
export interface Known {
  named: { readonly [field: string]: readonly string[] }
  any: readonly string[]
}

export function sampler(
  seed: number,
  { schemas, known }: { schemas: { [name: string]: Schema }; known: Known },
): Sampler {
  const random = chance(seed)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!

  function text({ pattern, minLength = 0, maxLength = 1e6 }: Schema, name = ''): string {
    const fits = (each: string) =>
      each.length >= minLength && each.length <= maxLength && (pattern === undefined || new RegExp(pattern).test(each))
    const named = (known.named[name] ?? []).filter(fits)
    if (named.length > 0 && random() < 0.8) return pick(named)
    const found = known.any.filter(fits)
    if (found.length > 0 && random() < 0.9) return pick(found)
    const odd = oddTexts.filter(fits)
    return pick(odd.length > 0 ? odd : ['a'.repeat(Math.max(1, minLength))])
  }

  function number({ type, minimum, maximum, exclusiveMinimum, multipleOf }: Schema): number {
    const low = minimum ?? exclusiveMinimum ?? -10
    const high = Math.min(maximum ?? low + 1000, low + 1e9)
    const near = pick([low, low + 1, low + 2, high, low + random() * (high - low), low + random() * 10])
    const step = multipleOf ?? (type === 'integer' ? 1 : 0)
    const bounded = Math.min(high, Math.max(low, near))
    const found = step > 0 ? Math.round(bounded / step) * step : bounded
    return exclusiveMinimum !== undefined && found <= exclusiveMinimum ? exclusiveMinimum + (step || 0.5) : found
  }

  function list({ items, prefixItems, minItems = 0, maxItems = 1e6 }: Schema, depth: number, name: string): unknown[] {
    if (prefixItems) return prefixItems.map((each) => value(each, { depth: depth + 1, name }))
    const most = depth > deepest ? minItems : Math.min(maxItems, minItems + 2)
    const length = minItems + Math.floor(random() * (most - minItems + 1))
    return Array.from({ length }, () => value(items ?? {}, { depth: depth + 1, name }))
  }

  function object({ properties = {}, required = [], propertyNames, additionalProperties }: Schema, depth: number) {
    const chosen = Object.entries(properties).filter(
      ([name]) => required.includes(name) || (depth < deepest && random() < 0.5),
    )
    const fields = chosen.map(([name, schema]) => [name, value(schema, { depth: depth + 1, name })])
    if (typeof additionalProperties === 'object' && depth < deepest)
      for (let left = Math.floor(random() * 3); left > 0; left--)
        fields.push([text(propertyNames ?? { minLength: 1 }), value(additionalProperties, { depth: depth + 1 })])
    return Object.fromEntries(fields)
  }

  function value(schema: Schema, { depth = 0, name = '' } = {}): unknown {
    if (schema.$ref) return value(schemas[schema.$ref.split('/').at(-1)!] ?? {}, { depth, name })
    const several = schema.anyOf ?? schema.oneOf
    if (several) return value(pick(several), { depth, name })
    if ('const' in schema) return schema.const
    if (schema.enum) return pick(schema.enum)
    switch (schema.type) {
      case 'string':
        return text(schema, name)
      case 'integer':
      case 'number':
        return number(schema)
      case 'boolean':
        return random() < 0.5
      case 'null':
        return null
      case 'array':
        return list(schema, depth, name)
      case 'object':
        return object(schema, depth)
      default:
        return pick<unknown>([null, 1, 'a', [], {}])
    }
  }

  return { value: (schema, name = '') => value(schema, { name }), pick }
}
