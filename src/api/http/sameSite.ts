import type { FastifyInstance, FastifyRequest } from 'fastify'
import { ApiError } from '../errors.ts'

/** Whether a browser says that the request comes from a page of another site. Other programs send neither header. */
function fromElsewhere(request: FastifyRequest): boolean {
  const site = request.headers['sec-fetch-site']
  if (site !== undefined) return site !== 'same-origin' && site !== 'none'
  const { origin, host } = request.headers
  if (origin === undefined) return false
  return !URL.canParse(origin) || new URL(origin).host !== host
}

/** Nothing can be written from another site's page, in whoever's name the browser would send it. */
export function refuseOtherSites(app: FastifyInstance): void {
  app.addHook('onRequest', async (request) => {
    if (request.method === 'GET' || request.method === 'HEAD' || !fromElsewhere(request)) return
    const message = 'The request comes from a page of another site, and only pages of this server may change anything'
    throw new ApiError({ code: 'forbidden', message })
  })
}
