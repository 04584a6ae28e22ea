import rateLimit from '@fastify/rate-limit'
import type { FastifyInstance } from 'fastify'
import { ApiError } from '../errors.ts'

/**
 * Requests about guesses from one address in a minute. Thirty phones behind one access point that ask every three
 * seconds whether the round is closed are 600.
 */
export const mostGuessRequests = 3000

const aboutGuesses = /^\/(api\/guess-rounds|trpc\/[\w.,]*guesses\.)/

/** A phone that runs wild does not keep the others from guessing; nothing else is limited. */
export async function limitGuesses(app: FastifyInstance, most = mostGuessRequests): Promise<void> {
  await app.register(rateLimit, {
    max: most,
    timeWindow: '1 minute',
    allowList: (request) => !aboutGuesses.test(request.url),
    errorResponseBuilder: (_request, { ttl }) =>
      new ApiError({
        code: 'tooMany',
        message: 'Too many requests about guesses come from this address; wait a minute',
        retryAfter: Math.ceil(ttl / 1000),
      }),
  })
}
