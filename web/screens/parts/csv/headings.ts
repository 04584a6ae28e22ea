import { words } from '../../../words/catalogue.ts'
import { numbersOf, type PartKind, partKinds } from '../numbers.ts'
import { flowHead, headOf, readerFor } from './heads.ts'

/** Where the numbers of a part stand in a table, and how they become SI. */
export interface Heads {
  numbers: ReadonlyMap<string, { head: string; read(value: number): number | null }>
  /** The heading of a compressor's points. */
  flow: string | null
}

const texts = ['id', 'name', 'source', 'date']

/** The headings among these that are numbers of a kind. */
const ofKind = (kind: PartKind, heads: readonly string[]) =>
  heads.filter(
    (head) =>
      (kind === 'compressor' && head === flowHead) ||
      numbersOf[kind].some(({ column, quantity }) => readerFor(head, column, quantity) !== null),
  )

/** The kind of part that most headings belong to; null where none does. */
export function kindOf(heads: readonly string[]): PartKind | null {
  const counts = partKinds.map((kind) => ({ kind, count: ofKind(kind, heads).length }))
  const [best] = counts.toSorted((a, b) => b.count - a.count)
  return best && best.count > 0 ? best.kind : null
}

/** The columns of a table of this kind. Throws a sentence where a heading is missing, unknown or there twice. */
export function headsOf(kind: PartKind, heads: readonly string[]): Heads {
  const said = words().parts
  const name = said.many[kind]
  const known = ofKind(kind, heads)
  const unknown = heads.filter((head) => !texts.includes(head) && !known.includes(head))
  if (unknown.length > 0) throw new Error(said.csv.unknownHead(unknown.join(', '), name))
  const twice = heads.find((head, index) => heads.indexOf(head) < index)
  if (twice !== undefined) throw new Error(said.csv.twiceHead(twice))
  const numbers = new Map<string, { head: string; read(value: number): number | null }>()
  const missing = ['name', 'source', 'date'].filter((head) => !heads.includes(head))
  for (const { key, column, quantity, optional } of numbersOf[kind]) {
    const found = heads.flatMap((head) => {
      const read = readerFor(head, column, quantity)
      return read ? [{ head, read }] : []
    })
    if (found.length > 1) throw new Error(said.csv.twiceHead(found[1]!.head))
    if (found[0]) numbers.set(key, found[0])
    else if (!optional) missing.push(headOf(column, quantity))
  }
  if (kind === 'compressor' && !heads.includes(flowHead)) missing.push(flowHead)
  if (missing.length > 0) throw new Error(said.csv.missingHead(missing.join(', '), name))
  return { numbers, flow: kind === 'compressor' ? flowHead : null }
}
