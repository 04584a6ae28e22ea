import { createHash } from 'node:crypto'
import { setImmediate } from 'node:timers/promises'
import { canonicalJson } from '../../model/scouting/index.ts'

/** The canonical JSON of an event's contents, item by item: as one text it may be 100 MB, and all else would wait for it. */
export function* piecesOf(contents: { readonly [part: string]: unknown }): Generator<string> {
  let before = '{'
  for (const part of Object.keys(contents).sort()) {
    const value = contents[part]
    yield `${before}${JSON.stringify(part)}:`
    before = ','
    if (Array.isArray(value)) {
      yield '['
      for (const [index, item] of value.entries()) yield `${index === 0 ? '' : ','}${canonicalJson(item)}`
      yield ']'
    } else yield canonicalJson(value)
  }
  yield before === '{' ? '{}' : '}'
}

/** For so long the server works on a file before it lets others be answered (ms). */
const breath = 20

/** Takes items one after the other; whoever else waits for the server is answered in between. */
export async function unhurried<Item>(items: Iterable<Item>, take: (item: Item, index: number) => void): Promise<void> {
  let since = performance.now()
  let index = 0
  for (const item of items) {
    take(item, index++)
    if (performance.now() - since < breath) continue
    await setImmediate()
    since = performance.now()
  }
}

/** SHA-256 of the canonical JSON. */
export async function contentsHash(contents: { readonly [part: string]: unknown }): Promise<string> {
  const hash = createHash('sha256')
  await unhurried(piecesOf(contents), (piece) => void hash.update(piece))
  return hash.digest('hex')
}

/** Pieces in lumps of a size that is worth sending. */
export function* inLumps(pieces: Iterable<string>): Generator<string> {
  let lump = ''
  for (const piece of pieces) {
    lump += piece
    if (lump.length < 65_536) continue
    yield lump
    lump = ''
  }
  yield lump
}
