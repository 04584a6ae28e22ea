import type { FastifyInstance, FastifyReply } from 'fastify'
import { bodyOf, type Failure, notJson, table, tooLargeFor } from '../errors.ts'
import { failureOf, isOurs } from '../failures.ts'

const ofServer: { readonly [code: string]: Failure } = {
  FST_ERR_CTP_INVALID_MEDIA_TYPE: notJson,
  FST_ERR_CTP_EMPTY_TYPE: notJson,
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: {
    code: 'malformed',
    message: 'The body is not as long as its Content-Length says',
    path: [],
  },
}

/** Answers with the error's body and status; a server's own fault is logged, and its details stay in the log. */
export function answerFailure(reply: FastifyReply, failure: Failure, cause: unknown): FastifyReply {
  if (isOurs(failure)) reply.log.error(cause)
  if (failure.retryAfter !== undefined) reply.header('Retry-After', failure.retryAfter)
  return reply.code(table[failure.code].status).type('application/json').send(bodyOf(failure))
}

/** An address that no route can be looked up by: it can not be decoded, or a part of it is longer than any id. */
export function answerUnreadableAddress(error: unknown, _request: unknown, reply: FastifyReply): void {
  answerFailure(reply, { code: 'malformed', message: 'The address can not be read, or is too long', path: [] }, error)
}

/** What goes wrong before or outside a procedure: bodies that can not be read, and faults of the server. */
export function answerErrors(app: FastifyInstance): void {
  app.setErrorHandler((error: Error & { code?: string; statusCode?: number }, request, reply) => {
    if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE')
      return answerFailure(reply, tooLargeFor(request.routeOptions.bodyLimit), error)
    const known = error.code === undefined ? undefined : ofServer[error.code]
    const malformed = error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500
    const failure = known ?? failureOf(error)
    if (failure.code === 'internal' && malformed) {
      return answerFailure(reply, { code: 'malformed', message: 'The request can not be read', path: [] }, error)
    }
    return answerFailure(reply, failure, error)
  })
}
