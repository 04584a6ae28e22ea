import { Reader, Writer } from './bytes.ts'
import { CodeError } from './failure.ts'

/** What codes carry: rows, each as `packRow` wrote it, to the lead; or what a phone is to know, deflated, from the lead. */
export type Message = { what: 'rows'; rows: Uint8Array[] } | { what: 'pack'; deflated: Uint8Array }

const version = 1
const [rows, pack] = [0, 1]

/** A message as the bytes that go into frames. */
export function messageOf(message: Message): Uint8Array {
  if (message.what === 'pack')
    return new Writer()
      .byte(version * 16 + pack!)
      .all(message.deflated)
      .done()
  const writer = new Writer().byte(version * 16 + rows!).whole(message.rows.length)
  for (const row of message.rows) writer.block(row)
  return writer.done()
}

export function readMessage(bytes: Uint8Array): Message {
  const reader = new Reader(bytes)
  const head = reader.byte()
  if (head >> 4 > version) throw new CodeError('newer')
  if (head === version * 16 + pack!) return { what: 'pack', deflated: reader.rest() }
  if (head !== version * 16 + rows!) throw new CodeError('damaged')
  const found: Uint8Array[] = []
  for (let left = reader.whole(); left > 0; left--) found.push(reader.block())
  reader.end()
  return { what: 'rows', rows: found }
}
