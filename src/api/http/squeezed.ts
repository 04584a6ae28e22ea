import { promisify } from 'node:util'
import { constants, crc32, deflateRaw, deflateRawSync, gzip } from 'node:zlib'
import type { FastifyReply, FastifyRequest } from 'fastify'

const [pressed, deflated] = [promisify(gzip), promisify(deflateRaw)]

/** The fields of an answer: those that stay, as an object that is never changed, and those that are others each time. */
interface Parts {
  whole: object
  rest: object
}

const partsOf = new WeakMap<object, Parts>()

/** An answer of which most stays the same, so that it is written and compressed once. `rest` is not empty. */
export function mostlyKept<Whole extends object, Rest extends object>(whole: Whole, rest: Rest): Whole & Rest {
  const answer = { ...whole, ...rest }
  partsOf.set(answer, { whole, rest })
  return answer
}

/** The beginning of an answer's JSON, as compressed blocks that others may follow. */
interface Beginning {
  blocks: Buffer
  crc: number
  length: number
}

const beginnings = new WeakMap<object, Promise<Beginning>>()

async function beginningOf(whole: object): Promise<Beginning> {
  const bytes = Buffer.from(JSON.stringify(whole).slice(0, -1))
  const blocks = await deflated(bytes, { finishFlush: constants.Z_SYNC_FLUSH })
  return { blocks, crc: crc32(bytes), length: bytes.length }
}

/** RFC 1952: deflated, without a name or a time, of an unknown system. */
const head = Buffer.from([0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 0xff])

async function joined({ whole, rest }: Parts): Promise<Buffer> {
  const before = beginnings.get(whole) ?? beginningOf(whole)
  beginnings.set(whole, before)
  // A failure is not kept.
  before.catch(() => beginnings.delete(whole))
  const { blocks, crc, length } = await before
  const end = Buffer.from(`,${JSON.stringify(rest).slice(1)}`)
  const foot = Buffer.alloc(8)
  foot.writeUInt32LE(crc32(end, crc))
  foot.writeUInt32LE(length + end.length, 4)
  return Buffer.concat([head, blocks, deflateRawSync(end), foot])
}

/**
 * A large answer, compressed where the browser reads that. Only for answers that repeat nothing of the request beside
 * a secret: their length would tell of it.
 */
export async function squeezed(request: FastifyRequest, reply: FastifyReply, answer: unknown): Promise<FastifyReply> {
  reply.header('Vary', 'Accept-Encoding')
  if (!/\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''))) return reply.send(answer)
  reply.header('Content-Encoding', 'gzip').type('application/json; charset=utf-8')
  const parts = partsOf.get(answer as object)
  return reply.send(await (parts ? joined(parts) : pressed(JSON.stringify(answer))))
}
