import fc from 'fast-check'

export type Path = (string | number)[]
// biome-ignore lint/suspicious/noExplicitAny: documents that are no longer what their type says
type Anything = any

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inside = Object.entries(value).flatMap(([key, part]) =>
    pathsOf(part, [...path, Array.isArray(value) ? Number(key) : key]),
  )
  return path.length === 0 ? inside : [path, ...inside]
}

function idsOf(value: unknown): string[] {
  return [...JSON.stringify(value).matchAll(/"id":"([^"]+)"/g)].map(([, id]) => id!)
}

/** Texts that have broken programs elsewhere. */
export const oddTexts = [
  '',
  ' ',
  'drive',
  'any',
  'constructor',
  'toString',
  'hasOwnProperty',
  '\u0000',
  '🦑'.repeat(60),
]

/** What can be put in the place of anything: odd numbers, odd names, ids of other things, and any JSON. */
function replacements(ids: readonly string[]) {
  const numbers = [0, -1, 1, 0.5, 1e-9, 5e-324, 1e9, 1e308, -1e308, 0.1, 0.3, 2, 3, 59.9, 600, 1e15]
  return fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom<unknown>(...numbers) },
    { weight: 2, arbitrary: fc.double({ min: 0, max: 60, noNaN: true }) },
    { weight: ids.length > 0 ? 3 : 0, arbitrary: fc.constantFrom<unknown>(...ids, null) },
    { weight: 1, arbitrary: fc.constantFrom<unknown>(...oddTexts) },
    { weight: 1, arbitrary: fc.constantFrom<unknown>(null, true, [], {}, [[]], 'gone') },
    { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 3 }) },
  )
}

type Change = { path: Path; how: 'put' | 'take' | 'repeat' | 'stretch'; value: unknown; factor: number }

function changed(document: Anything, changes: readonly Change[]): Anything {
  const body = structuredClone(document)
  for (const { path, how, value, factor } of changes) {
    const key = path.at(-1)!
    const parent = path.slice(0, -1).reduce<Anything>((part, each) => part?.[each], body)
    if (typeof parent !== 'object' || parent === null) continue
    if (how === 'put') parent[key] = value
    else if (how === 'take') Array.isArray(parent) ? parent.splice(Number(key), 1) : delete parent[key]
    else if (how === 'repeat' && Array.isArray(parent)) parent.push(structuredClone(parent[Number(key)]))
    else if (how === 'stretch' && typeof parent[key] === 'number') parent[key] *= factor
  }
  return body
}

/** A file, with some of its bytes changed or its end cut off; or any bytes. */
export function files(file: Uint8Array): fc.Arbitrary<Uint8Array> {
  const at = fc.nat(file.length - 1)
  const bytes = fc.array(fc.tuple(at, fc.nat(255)), { maxLength: 4 })
  const changed = fc.record({ bytes, length: fc.option(at, { nil: file.length }) }).map(({ bytes, length }) => {
    const copy = Uint8Array.from(file)
    for (const [index, byte] of bytes) copy[index] = byte
    return copy.subarray(0, length)
  })
  return fc.oneof(changed, changed, fc.uint8Array())
}

/** A document, changed in up to three places. */
export function bodies(document: object): fc.Arbitrary<Anything> {
  const paths = pathsOf(document)
  if (paths.length === 0) return fc.jsonValue({ maxDepth: 2 })
  const change = fc.record<Change>({
    path: fc.constantFrom(...paths),
    how: fc.constantFrom('put', 'put', 'stretch', 'stretch', 'take', 'repeat'),
    value: replacements(idsOf(document)),
    factor: fc.constantFrom(0, 0.01, 0.5, 0.9, 1.1, 2, 10, 100, -1),
  })
  return fc.array(change, { minLength: 1, maxLength: 3 }).map((changes) => changed(document, changes))
}
