import { join } from 'node:path'
import staticFiles from '@fastify/static'
import type { FastifyInstance } from 'fastify'
import { answerFailure } from './errors.ts'

const machine = /^\/(api|trpc|health)(\/|$|\?)/

/** Whether the address is that of a screen: a page of the web, which finds its way by itself. */
function isScreen(method: string, url: string): boolean {
  const path = url.split('?')[0]!
  return (method === 'GET' || method === 'HEAD') && !machine.test(url) && !/\.\w+$/.test(path)
}

/** The scouts' page is one of its own. */
const stands = /^\/stands(\/|$|\?)/

/** The built web, if there is one; screens have addresses of their own that all lead to its one page, or to that of the stands. */
export async function serveWeb(app: FastifyInstance, webRoot: string | undefined): Promise<void> {
  if (webRoot !== undefined) {
    await app.register(staticFiles, {
      root: webRoot,
      wildcard: true,
      setHeaders(reply, path) {
        const named = path.startsWith(join(webRoot, 'assets'))
        reply.header('Cache-Control', named ? 'public, max-age=31536000, immutable' : 'no-cache')
      },
    })
  }
  app.setNotFoundHandler((request, reply) => {
    if (webRoot !== undefined && isScreen(request.method, request.url))
      return reply.sendFile(stands.test(request.url) ? 'stands.html' : 'index.html')
    const path = request.url.split('?')[0]!
    const message = `There is nothing at ${request.method} ${path.length > 200 ? `${path.slice(0, 200)}…` : path}`
    return answerFailure(reply, { code: 'notFound', message }, null)
  })
}
