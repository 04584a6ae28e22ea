import type { FastifyInstance } from 'fastify'

/** Each answer bears its request's id, which also stands in every line that the log has of it. */
export function nameRequests(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    reply.header('X-Request-Id', request.id)
  })
}
