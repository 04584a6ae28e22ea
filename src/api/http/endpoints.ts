import type { AnyProcedure } from '@trpc/server'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { ApiError, failureOf } from '../errors.ts'
import { Readers } from '../records/reading/readers.ts'
import { appRouter } from '../router.ts'
import { createCallerFactory, type Endpoint, type OpenEndpoint } from '../trpc.ts'
import type { ContextOf } from './context.ts'
import { answerFailure } from './errors.ts'
import { keepText } from './json.ts'

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

/** What a procedure is given: the body or the query, and what stands in the path. */
function inputOf(request: FastifyRequest): unknown {
  const path = request.params as Fields
  if (request.method === 'GET' || request.method === 'DELETE') {
    const query = Object.entries(request.query as Fields).map(([key, value]) => [key, fromQuery(value)])
    return { ...Object.fromEntries(query), ...path }
  }
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

/** Offers procedures as plain HTTP and JSON at their own addresses. */
export function offerEndpoints(app: FastifyInstance, contextOf: ContextOf): void {
  const all = offered()
  for (const each of all.filter(({ endpoint }) => !endpoint.readByThread)) {
    offer(app, { ...each, contextOf, inputOf })
  }
  const large = all.filter(({ endpoint }) => endpoint.readByThread)
  const readers = new Readers()
  app.addHook('onClose', () => readers.close())
  app.register(async (scope) => {
    keepText(scope)
    for (const each of large) {
      offer(scope, { ...each, contextOf, inputOf: ({ body }) => readers.body(typeof body === 'string' ? body : '') })
    }
  })
}

interface Offer extends Offered {
  contextOf: ContextOf
  inputOf(request: FastifyRequest): unknown
}

const callerOf = createCallerFactory(appRouter)

function offer(app: FastifyInstance, { name, endpoint, contextOf, inputOf }: Offer): void {
  app.route({
    method: endpoint.method,
    url: endpoint.path.replaceAll(/\{(\w+)\}/g, ':$1'),
    handler: async (request, reply) => {
      try {
        const caller = callerOf(await contextOf(reply)) as unknown as Fields
        const call = name.split('.').reduce<unknown>((part, key) => (part as Fields)[key], caller) as Call
        const answer = await call(await inputOf(request))
        const failure = endpoint.refused?.(answer) ?? null
        return failure ? answerFailure(reply, failure, null) : reply.send(answer)
      } catch (error) {
        return answerFailure(reply, failureOf(error), error)
      }
    },
  })
}
