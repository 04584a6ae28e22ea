import type { FastifyInstance, FastifyRequest } from 'fastify'
import { ApiError } from '../errors.ts'

const here = /^(localhost|127(\.\d{1,3}){3}|\[::1\])(:\d+)?$/i

/** Whether it is asked by a name that only this machine has. */
export const isHere = ({ headers }: FastifyRequest): boolean => here.test(headers.host ?? '')

/** Whether a request comes by another name, or through a proxy: from elsewhere, for all that is known. */
export const fromElsewhere = (request: FastifyRequest): boolean => {
  const { headers } = request
  return (
    !isHere(request) ||
    headers['x-forwarded-for'] !== undefined ||
    headers['x-forwarded-host'] !== undefined ||
    headers.forwarded !== undefined
  )
}

/**
 * While the server belongs to nobody, whoever reaches it acts as its lead. It listens on this machine only; a page of another
 * site whose name is pointed at this machine, and a proxy that would open it to others, are refused here.
 */
export function refuseElsewhere(app: FastifyInstance, isClaimed: () => boolean): void {
  app.addHook('onRequest', async (request) => {
    if (isClaimed() || !fromElsewhere(request)) return
    const message =
      'This server belongs to nobody yet, so that it answers on its own machine only: open the set-up link that its start prints there'
    throw new ApiError({ code: 'forbidden', message })
  })
}
