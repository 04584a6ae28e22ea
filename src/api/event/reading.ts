import { type EventSaid, type Finding, tellEvent } from '../../model/event/index.ts'
import type { By } from '../../store/types.ts'
import { missing, read } from '../documents/read.ts'
import { ApiError, type Code, malformed } from '../errors.ts'
import type { Context } from '../trpc.ts'

/** A refusal with one of the event's sentences. */
export const refusal = (code: Code, said: EventSaid, path: (string | number)[] = []): ApiError =>
  new ApiError({ code, ...tellEvent(said), path })

/** The event and its game as they are now. */
export async function eventAt(workspace: Context['workspace'], id: string) {
  const event = await read(workspace, 'event', { id })
  if (!event || event.removed) throw refusal('notFound', { code: 'noEvent', parts: { id } }, ['event'])
  return event.body
}

export async function gameOf(workspace: Context['workspace'], id: string) {
  const game = await read(workspace, 'game', { id })
  if (!game) throw new ApiError({ code: 'notFound', ...missing('game', { id }), path: ['game'] })
  return game.body
}

export const byOf = ({ who }: Pick<Context, 'who'>): By => ({ person: who.person, device: who.device })

/** Refuses what is wrong; what is only odd passes. `place` says where in the request a match stands. */
export function refuseWrong(findings: readonly Finding[], place: (match: string | null) => (string | number)[]): void {
  const wrong = findings.filter(({ weight }) => weight === 'wrong')
  if (wrong.length === 0) return
  throw new ApiError(malformed(wrong.map(({ match, message, said }) => ({ path: place(match), message, said }))))
}

export const changedMeanwhile = () => refusal('conflict', { code: 'changedMeanwhile', parts: {} })
