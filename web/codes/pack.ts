import { CodeError, messageOf } from '../../src/model/scouting/code/index.ts'
import { type Shown, shownOf } from './shown.ts'

/** Text of a pack at most: what a phone is made to hold by a code is no more than an event. */
const longest = 4_000_000

async function through(bytes: Uint8Array, stream: GenericTransformStream): Promise<Uint8Array> {
  const out = new Blob([bytes as BlobPart]).stream().pipeThrough(stream as ReadableWritablePair<Uint8Array, Uint8Array>)
  const parts: Uint8Array[] = []
  let length = 0
  for (const reader = out.getReader(); ; ) {
    const { done, value } = await reader.read()
    if (done) break
    length += value.length
    if (length > longest) throw new CodeError('damaged')
    parts.push(value)
  }
  return new Uint8Array(await new Blob(parts as BlobPart[]).arrayBuffer())
}

/** JSON, deflated (RFC 1951): schedules repeat themselves, so that a tenth of it is left. */
export const deflated = (value: unknown): Promise<Uint8Array> =>
  through(new TextEncoder().encode(JSON.stringify(value)), new CompressionStream('deflate-raw'))

export async function inflated(bytes: Uint8Array): Promise<unknown> {
  try {
    const text = await through(bytes, new DecompressionStream('deflate-raw'))
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(text))
  } catch {
    throw new CodeError('damaged')
  }
}

/** What a phone is to know, as codes. */
export async function shownPack(pack: unknown): Promise<Shown> {
  return shownOf(messageOf({ what: 'pack', deflated: await deflated(pack) }))
}
