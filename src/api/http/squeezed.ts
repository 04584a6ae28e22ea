import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import type { FastifyReply, FastifyRequest } from 'fastify'

const pressed = promisify(gzip)

/**
 * A large answer, compressed where the browser reads that. Only for answers that repeat nothing of the request beside
 * a secret: their length would tell of it.
 */
export async function squeezed(request: FastifyRequest, reply: FastifyReply, answer: unknown): Promise<FastifyReply> {
  reply.header('Vary', 'Accept-Encoding')
  if (!/\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''))) return reply.send(answer)
  reply.header('Content-Encoding', 'gzip').type('application/json; charset=utf-8')
  return reply.send(await pressed(JSON.stringify(answer)))
}
