import type { Changed } from '../../store/types.ts'
import { ApiError } from '../errors.ts'
import { say } from '../sentences.ts'
import type { Context } from '../trpc.ts'

/** Throws where nothing was changed. */
export function refuseUnchanged(outcome: Exclude<Changed, 'done'>, named: string): never
export function refuseUnchanged(outcome: Changed, named: string): void
export function refuseUnchanged(outcome: Changed, named: string): void {
  if (outcome === 'missing') {
    throw new ApiError({ code: 'notFound', ...say({ code: 'noPerson', parts: { id: named } }), path: ['person'] })
  }
  if (outcome === 'lastLead') {
    throw new ApiError({ code: 'conflict', ...say({ code: 'lastLead', parts: {} }), path: ['person'] })
  }
}

/** So that screens that are open ask who they are now: what somebody may do has changed, or that they are signed in. */
export function tellPeople({ tell }: Pick<Context, 'tell'>): void {
  tell({ event: null, what: 'people' })
  tell({ event: null, what: 'devices' })
}
