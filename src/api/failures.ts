import { TRPCError } from '@trpc/server'
import * as z from 'zod'
import { ModelError } from '../model/errors.ts'
import { isAway, isFull } from '../store/index.ts'
import { problemsOf } from './contracts/index.ts'
import { ApiError, type Failure, malformed, notJson, tooLarge } from './errors.ts'

// Apart from errors.ts, because threads know that, and need no database for it.

const ofModel = { invalid: 'malformed', unreachable: 'unreachable', overBudget: 'overBudget' } as const

/** What a client is told of an error, whatever it was; what is not ours to explain becomes 'internal' and says nothing. */
export function failureOf(error: unknown): Failure {
  if (error instanceof ApiError) return error.failure
  if (error instanceof ModelError) {
    const { code, message, path, said } = error
    return { code: ofModel[code], message, path, said }
  }
  if (error instanceof TRPCError) {
    if (error.cause instanceof ApiError || error.cause instanceof ModelError) return failureOf(error.cause)
    if (error.code === 'BAD_REQUEST' && error.cause instanceof z.core.$ZodError)
      return malformed(problemsOf(error.cause))
    if (error.code === 'PARSE_ERROR') return { code: 'malformed', message: 'The body is not valid JSON' }
    if (error.code === 'NOT_FOUND') return { code: 'notFound', message: 'There is no such procedure' }
    if (error.code === 'METHOD_NOT_SUPPORTED') {
      return { code: 'malformed', message: 'Reading is asked for by GET, everything else by POST' }
    }
    if (error.code === 'UNSUPPORTED_MEDIA_TYPE') return notJson
    if (error.code === 'PAYLOAD_TOO_LARGE') return tooLarge
  }
  return ofDatabase(error instanceof TRPCError ? error.cause : error)
}

function ofDatabase(error: unknown): Failure {
  if (isFull(error)) return full
  return isAway(error) ? noDatabase : internal
}

const full: Failure = {
  code: 'storageFull',
  message: 'The server’s disk is full. Nothing of this was saved: tell a lead',
  retryAfter: 60,
}

const noDatabase: Failure = {
  code: 'noDatabase',
  message:
    'The server does not reach its database at this moment, so it is not known whether this was saved. Try again soon',
  retryAfter: 5,
}

const internal: Failure = {
  code: 'internal',
  message: 'Something went wrong in the server. Nothing was saved; the server’s log says more',
}

/** Whether the log is to say what it was. */
export const isOurs = ({ code }: Failure): boolean =>
  code === 'internal' || code === 'noDatabase' || code === 'storageFull'
