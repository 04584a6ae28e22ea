import { fastifyRequestHandler } from '@trpc/server/adapters/fastify'
import type { FastifyInstance } from 'fastify'
import { failureOf, isOurs } from '../failures.ts'
import { appRouter } from '../router.ts'
import type { ContextOf } from './context.ts'
import { readJson } from './json.ts'

/** The same procedures for the web, typed end to end. The body stays text here because the handler reads it itself. */
export async function offerTrpc(app: FastifyInstance, contextOf: ContextOf): Promise<void> {
  await app.register(
    async (scope) => {
      readJson(scope, true)
      scope.all<{ Params: { path: string } }>('/:path', (req, res) =>
        fastifyRequestHandler({
          router: appRouter,
          req,
          res,
          path: req.params.path,
          createContext: () => contextOf(res),
          allowMethodOverride: false,
          onError: ({ error }) => {
            if (isOurs(failureOf(error))) res.log.error(error.cause ?? error)
          },
          responseMeta: ({ errors }) => {
            const seconds = errors.map((error) => failureOf(error).retryAfter).find((each) => each !== undefined)
            return seconds === undefined ? {} : { headers: new Headers({ 'Retry-After': String(seconds) }) }
          },
        }),
      )
    },
    { prefix: '/trpc' },
  )
}
