import { retryAfter } from './backoff.ts'
import type { Kept } from './database.ts'
import { type Acknowledged, isAcknowledged, isSession, type Session } from './shapes.ts'

export type Ask = typeof fetch

/** A try that takes longer is given up (ms): a weak network is dead more often than slow. */
const patience = 20_000

export type Failed =
  /** No answer, or none that is our server's. */
  | { failed: 'noServer' }
  /** Nobody is signed in, or not any more. */
  | { failed: 'signIn' }
  /** The server asks for some time (ms). */
  | { failed: 'busy'; after: number | null }
  /** The rows together are not what it takes: one alone may be. */
  | { failed: 'unreadable'; why: string }

async function asJson(response: Response): Promise<unknown> {
  try {
    return await response.json()
  } catch {
    return null
  }
}

const failure = (found: unknown): { code: string; message: string } | null => {
  const { error } = (found ?? {}) as { error?: { code?: unknown; message?: unknown } }
  return typeof error?.code === 'string' ? { code: error.code, message: String(error.message ?? '') } : null
}

async function answerOf<T>(
  response: Response,
  is: (value: unknown) => value is T,
  now: number,
): Promise<{ answer: T } | Failed> {
  const found = await asJson(response)
  if (response.ok) return is(found) ? { answer: found } : { failed: 'noServer' }
  const { status } = response
  if (status === 401) return { failed: 'signIn' }
  if (status === 429 || status === 503)
    return { failed: 'busy', after: retryAfter(response.headers.get('retry-after'), now) }
  const said = failure(found)
  if (status === 403 && said) return { failed: 'signIn' }
  // Only what our own server says of the rows is about the rows: a portal answers 404 and 400, too.
  if ((status === 400 || status === 413 || status === 422) && said) return { failed: 'unreadable', why: said.message }
  return { failed: 'noServer' }
}

async function asked<T>(
  ask: Ask,
  { path, init, now }: { path: string; init: RequestInit; now: number },
  is: (value: unknown) => value is T,
): Promise<{ answer: T } | Failed> {
  try {
    const response = await ask(path, {
      credentials: 'same-origin',
      cache: 'no-store',
      redirect: 'error',
      signal: AbortSignal.timeout(patience),
      ...init,
    })
    return await answerOf(response, is, now)
  } catch {
    return { failed: 'noServer' }
  }
}

/** Who is signed in, as the server has it. */
export const askSession = (ask: Ask, now: number): Promise<{ answer: Session } | Failed> =>
  asked(ask, { path: '/api/session', init: {}, now }, isSession)

/** Sends rows of one device; only an answer of the right shape counts as one. */
export function postRows(
  ask: Ask,
  { rows, unsent, app, now }: { rows: readonly Kept[]; unsent: number; app: string; now: number },
): Promise<{ answer: Acknowledged } | Failed> {
  const body = JSON.stringify({ device: rows[0]!.device, unsent, app, rows: rows.map(({ row }) => row) })
  const headers = { 'content-type': 'application/json' }
  return asked(ask, { path: '/api/records', init: { method: 'POST', headers, body }, now }, isAcknowledged)
}

/** Any other question whose answer has to have a shape. */
export const askFor = <T>(
  ask: Ask,
  { path, now, init = {} }: { path: string; now: number; init?: RequestInit },
  is: (value: unknown) => value is T,
): Promise<{ answer: T } | Failed> => asked(ask, { path, init, now }, is)
