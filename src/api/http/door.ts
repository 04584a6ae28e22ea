import '@fastify/cookie'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { sessionDays } from '../../store/index.ts'
import type { Attempts } from '../people/attempts.ts'

/** How whoever asks is let in and out again. */
export interface Door {
  /** Whether the server belongs to somebody. */
  isClaimed(): boolean
  /** From now on it does. */
  claimed(): void
  /** Tried passphrases, by account. */
  attempts: Attempts
  /** Keeps a session's token in the browser that asks, or keeps it longer. */
  begin(token: string): void
  /** The token that the browser brought. */
  token: string | null
  end(): void
}

/** Whether the browser speaks https: with this server, or with a proxy before it, which says so. It decides over nobody's cookie but the sender's. */
export const isSecure = ({ protocol, headers }: FastifyRequest): boolean =>
  protocol === 'https' || headers['x-forwarded-proto'] === 'https'

/** By its name a browser takes the first from https only, for this host only and for all its paths (RFC 6265bis, 4.1.3.2). */
const cookieName = (request: FastifyRequest): string => (isSecure(request) ? '__Host-cyclewright' : 'cyclewright')

/** The session's token that a request bears. */
export function tokenOf(request: FastifyRequest): string | null {
  const token = request.cookies[cookieName(request)]
  return token !== undefined && /^[\w-]{20,100}$/.test(token) ? token : null
}

const optionsFor = (request: FastifyRequest) =>
  ({ path: '/', httpOnly: true, sameSite: 'strict', secure: isSecure(request) }) as const

/** Puts a session's token where no script reads it and no other site's page sends it. */
export function keepToken(reply: FastifyReply, token: string): void {
  const maxAge = sessionDays * 86_400
  const { request } = reply
  reply.setCookie(cookieName(request), token, { ...optionsFor(request), maxAge })
}

export function dropToken(reply: FastifyReply): void {
  reply.clearCookie(cookieName(reply.request), optionsFor(reply.request))
}
