import type { Path, Problem } from '../model/errors.ts'
import type { AnySaid } from '../model/said.ts'
import type { JobFailure } from '../store/types.ts'

/** The one table from what went wrong to HTTP, and to the codes of tRPC. */
export const table = {
  /** Not what a contract or a semantic check allows. */
  malformed: { status: 400, trpc: 'BAD_REQUEST' },
  /** Nobody is signed in. */
  unauthenticated: { status: 401, trpc: 'UNAUTHORIZED' },
  /** Written from another site's page, or not for the role of whoever asks. */
  forbidden: { status: 403, trpc: 'FORBIDDEN' },
  notFound: { status: 404, trpc: 'NOT_FOUND' },
  /** Somebody saved in between. */
  conflict: { status: 409, trpc: 'CONFLICT' },
  tooLarge: { status: 413, trpc: 'PAYLOAD_TOO_LARGE' },
  notJson: { status: 415, trpc: 'UNSUPPORTED_MEDIA_TYPE' },
  /** Understood, but there is no way. */
  unreachable: { status: 422, trpc: 'UNPROCESSABLE_CONTENT' },
  /** Understood, but too much to compute. */
  overBudget: { status: 422, trpc: 'UNPROCESSABLE_CONTENT' },
  /** Understood, but this version can not compute it. */
  notOffered: { status: 422, trpc: 'UNPROCESSABLE_CONTENT' },
  /** More, or faster, than anybody needs. */
  tooMany: { status: 429, trpc: 'TOO_MANY_REQUESTS' },
  internal: { status: 500, trpc: 'INTERNAL_SERVER_ERROR' },
  /** All threads are at work and enough wait already. */
  busy: { status: 503, trpc: 'SERVICE_UNAVAILABLE' },
  /** No room left on the disk; nothing was kept. */
  storageFull: { status: 503, trpc: 'SERVICE_UNAVAILABLE' },
  /** The database can not be asked at this moment, or went away while it was. */
  noDatabase: { status: 503, trpc: 'SERVICE_UNAVAILABLE' },
} as const

export type Code = keyof typeof table

/** What a client is told. */
export interface Failure {
  code: Code
  message: string
  /** The same as a sentence’s name and parts. */
  said?: AnySaid | undefined
  path?: Path | undefined
  /** All that was found, where more than one field is wrong. */
  problems?: Problem[]
  /** What belongs to the answer besides: both revisions of a conflict. */
  details?: object
  /** When to ask again (s). */
  retryAfter?: number
}

/** A request that can not be carried out, with what its sender is told. */
export class ApiError extends Error {
  readonly failure: Failure
  constructor(failure: Failure) {
    super(failure.message)
    this.name = 'ApiError'
    this.failure = failure
  }
}

/** A document with problems: the first one leads, all are kept for the screen. */
export function malformed(problems: readonly Problem[]): Failure {
  const { message, path } = problems[0] ?? { message: 'The request is not what is expected here', path: [] }
  return { code: 'malformed', message, path, problems: [...problems] }
}

/** Throws if there are any; a list that is known not to be empty always throws. */
export function refuse(problems: readonly [Problem, ...Problem[]]): never
export function refuse(problems: readonly Problem[]): void
export function refuse(problems: readonly Problem[]): void {
  if (problems.length > 0) throw new ApiError(malformed(problems))
}

export const notJson: Failure = {
  code: 'notJson',
  message: 'The body must be JSON, with the content type application/json',
}

/** @param most what is read at that address (bytes) */
export const tooLargeFor = (most: number): Failure => ({
  code: 'tooLarge',
  message: `The body is larger than the ${Math.floor(most / 1_000_000)} MB that are read`,
})

export const tooLarge = tooLargeFor(2_000_000)

/** What is kept of a failed job. */
export const jobFailureOf = ({ code, message, path }: Failure): JobFailure => ({ code, message, path })

/** The error's body for plain HTTP. */
export function bodyOf({ code, message, path, details }: Failure): object {
  return { error: { code, message, ...(path === undefined ? {} : { path }) }, ...details }
}
