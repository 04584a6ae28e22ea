import { fromBase45, toBase45 } from './base45.ts'
import { Reader, Writer } from './bytes.ts'
import { crc32 } from './crc32.ts'
import { CodeError } from './failure.ts'
import { addTimes } from './galois.ts'
import { weights } from './weights.ts'

const mark = 0xc7
const version = 1
const [still, part] = [0, 1]

/** A frame's bytes at most: a code of 77 × 77 modules, which a laptop's camera reads from a phone at arm's length. */
export const frameBytes = 500
/** Mark, version, id, length, index and check sum around a part of the message. */
const around = 18

/** What one picture said. */
export type Frame =
  | { kind: 'still'; message: Uint8Array }
  | { kind: 'part'; id: number; length: number; index: number; data: Uint8Array }

const closed = (writer: Writer): string => toBase45(writer.fixed(crc32(writer.done()), 4).done())

/** A message as the text of one code. */
export const stillFrame = (message: Uint8Array): string =>
  closed(
    new Writer()
      .byte(mark)
      .byte(version * 16 + still!)
      .all(message),
  )

/** Frames without end, of which any `needed` different ones suffice (one more once in some 250 times). */
export interface Sequence {
  needed: number
  /** The text of the code with this index: the message's own parts first, then mixtures of all of them. */
  frame(index: number): string
}

/**
 * A message as frames. The first `needed` are its parts; each further one is a sum of all parts with weights that follow
 * from its index, so that a reader who missed some frames takes whichever come next and needs no second round.
 *
 * Source: random linear codes (Ho et al., IEEE Transactions on Information Theory 52 (2006), 4413–4430).
 */
export function framesOf(message: Uint8Array, size = frameBytes): Sequence {
  const id = crc32(message)
  // Parts as even as may be; evened out, they may be one fewer.
  const width = Math.ceil(message.length / Math.ceil(message.length / (size - around)))
  const needed = Math.ceil(message.length / width)
  const parts = Array.from({ length: needed }, (_, index) => {
    const data = new Uint8Array(width)
    data.set(message.subarray(index * width, (index + 1) * width))
    return data
  })
  const dataOf = (index: number): Uint8Array => {
    if (index < needed) return parts[index]!
    const data = new Uint8Array(width)
    const factors = weights(id, index, needed)
    for (const [place, own] of parts.entries()) addTimes(data, own, factors[place]!)
    return data
  }
  const frame = (index: number): string => {
    const writer = new Writer().byte(mark).byte(version * 16 + part!)
    return closed(writer.fixed(id, 4).whole(message.length).whole(index).all(dataOf(index)))
  }
  return { needed, frame }
}

/** What the text of a code says. */
export function readFrame(text: string): Frame {
  const bytes = fromBase45(text)
  const reader = new Reader(bytes)
  if (bytes.length < 6 || reader.byte() !== mark) throw new CodeError('foreign')
  const head = reader.byte()
  if (new Reader(bytes.slice(-4)).fixed(4) !== crc32(bytes.subarray(0, -4))) throw new CodeError('damaged')
  if (head >> 4 > version) throw new CodeError('newer')
  const inner = new Reader(reader.all(reader.left - 4))
  if (head === version * 16 + still!) return { kind: 'still', message: inner.rest() }
  if (head !== version * 16 + part!) throw new CodeError('damaged')
  const frame = { id: inner.fixed(4), length: inner.whole(), index: inner.whole(), data: inner.rest() }
  if (frame.data.length === 0 || frame.length === 0) throw new CodeError('damaged')
  return { kind: 'part', ...frame }
}
