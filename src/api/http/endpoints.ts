import { Readable } from 'node:stream'
import type { AnyProcedure } from '@trpc/server'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { ApiError } from '../errors.ts'
import { failureOf } from '../failures.ts'
import { Readers } from '../records/reading/readers.ts'
import { appRouter } from '../router.ts'
import { createCallerFactory, type Endpoint, type OpenEndpoint } from '../trpc.ts'
import { admitted } from '../who.ts'
import type { ContextOf } from './context.ts'
import { answerFailure } from './errors.ts'
import { keepBytes } from './json.ts'
import { squeezed } from './squeezed.ts'
import { readZip } from './zip.ts'

/** A procedure that is also offered as plain HTTP. */
export interface Offered {
  /** Dotted name in the router. */
  name: string
  endpoint: OpenEndpoint & Partial<Endpoint>
  procedure: AnyProcedure
}

/** All procedures of the router that have an address of their own. */
export function offered(): Offered[] {
  return Object.entries(appRouter._def.procedures as unknown as { [name: string]: AnyProcedure }).flatMap(
    ([name, procedure]) => {
      const { endpoint } = (procedure._def.meta ?? {}) as { endpoint?: Offered['endpoint'] }
      return endpoint ? [{ name, endpoint, procedure }] : []
    },
  )
}

type Fields = { [name: string]: unknown }

/** An address holds only text; numbers and true or false are read from it where they are written as such. */
function fromQuery(text: unknown): unknown {
  if (typeof text !== 'string') return text
  if (/^-?\d{1,15}$/.test(text)) return Number(text)
  return text === 'true' || text === 'false' ? text === 'true' : text
}

const queryOf = (request: FastifyRequest): Fields =>
  Object.fromEntries(Object.entries(request.query as Fields).map(([key, value]) => [key, fromQuery(value)]))

/** What a procedure is given: the body or the query, and what stands in the path. */
function inputOf(request: FastifyRequest, { takes }: Offered['endpoint']): unknown {
  const path = request.params as Fields
  if (takes) return { ...queryOf(request), ...path, file: request.body }
  if (request.method === 'GET' || request.method === 'DELETE') return { ...queryOf(request), ...path }
  const { body } = request
  if (Object.keys(path).length === 0) return body
  if (typeof body !== 'object' || body === null || Array.isArray(body)) {
    throw new ApiError({ code: 'malformed', message: 'The body must be an object', path: [] })
  }
  const twice = Object.keys(path).find((key) => Object.hasOwn(body, key))
  if (twice === undefined) return { ...body, ...path }
  throw new ApiError({ code: 'malformed', message: `${twice} already stands in the address`, path: [twice] })
}

type Call = (input: unknown) => Promise<unknown>

function send(reply: FastifyReply, { sends }: Offered['endpoint'], answer: unknown): FastifyReply {
  if (!sends) return reply.send(answer)
  const { name, body } = sends.file(answer)
  reply.header('Content-Disposition', `attachment; filename="${name}"`)
  reply.header('Cache-Control', 'no-store')
  const bytes = body instanceof Uint8Array
  return reply
    .type(sends.type)
    .send(
      bytes ? Buffer.from(body.buffer, body.byteOffset, body.byteLength) : Readable.from(body, { objectMode: false }),
    )
}

/** Offers procedures as plain HTTP and JSON at their own addresses. */
export function offerEndpoints(app: FastifyInstance, contextOf: ContextOf): void {
  const all = offered()
  const ofZip = all.filter(({ endpoint }) => endpoint.takes?.type === 'application/zip')
  const ofJson = all.filter(({ endpoint }) => endpoint.takes?.type === 'application/json')
  const large = all.filter(({ endpoint }) => endpoint.readByThread)
  for (const each of all) {
    if (![...ofZip, ...ofJson, ...large].includes(each)) offer(app, { ...each, contextOf })
  }
  void app.register(async (scope) => {
    readZip(scope)
    for (const each of ofZip) offer(scope, { ...each, contextOf })
  })
  void app.register(async (scope) => {
    keepBytes(scope)
    for (const each of ofJson) offer(scope, { ...each, contextOf })
  })
  const readers = new Readers()
  app.addHook('onClose', () => readers.close())
  void app.register(async (scope) => {
    keepBytes(scope)
    const read = ({ body }: FastifyRequest) => readers.body(Buffer.isBuffer(body) ? body : Buffer.alloc(0))
    for (const each of large) offer(scope, { ...each, contextOf, read })
  })
}

interface Offer extends Offered {
  contextOf: ContextOf
  /** Where the body is read in another way. */
  read?(request: FastifyRequest): Promise<unknown>
}

const callerOf = createCallerFactory(appRouter)

function offer(app: FastifyInstance, { name, endpoint, contextOf, read }: Offer): void {
  const { takes, most } = endpoint
  app.route({
    method: endpoint.method,
    url: endpoint.path.replaceAll(/\{(\w+)\}/g, ':$1'),
    ...(most !== undefined && { bodyLimit: most }),
    ...(takes && { bodyLimit: takes.most }),
    ...((takes ?? read) && {
      // What may be large is not read from whoever may not bring it in.
      onRequest: async (_, reply) => void admitted((await contextOf(reply)).who, endpoint.may ?? []),
    }),
    handler: async (request, reply) => {
      try {
        const caller = callerOf(await contextOf(reply)) as unknown as Fields
        const call = name.split('.').reduce<unknown>((part, key) => (part as Fields)[key], caller) as Call
        const answer = await call(read ? await read(request) : inputOf(request, endpoint))
        const failure = endpoint.refused?.(answer) ?? null
        if (failure) return answerFailure(reply, failure, null)
        return endpoint.squeezed ? await squeezed(request, reply, answer) : send(reply, endpoint, answer)
      } catch (error) {
        return answerFailure(reply, failureOf(error), error)
      }
    },
  })
}
