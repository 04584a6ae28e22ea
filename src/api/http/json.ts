import type { FastifyInstance } from 'fastify'
import { ApiError, type Failure, notJson } from '../errors.ts'

/** Largest body that is read: 2 MB. */
export const bodyLimit = 2 * 1024 * 1024

/** Deepest nesting that any document has is 15. */
const deepest = 40

/** How deep objects and lists are nested in a JSON text; read before it is parsed, so that no walk through it can overflow. */
export function nesting(json: string): number {
  let depth = 0
  let most = 0
  for (let index = 0; index < json.length; index += 1) {
    const code = json.charCodeAt(index)
    if (code === 0x22) {
      index = endOfString(json, index)
      if (index < 0) break
    } else if (code === 0x7b || code === 0x5b) {
      depth += 1
      if (depth > most) most = depth
    } else if (code === 0x7d || code === 0x5d) depth -= 1
  }
  return most
}

/** Where the string that begins here ends; below 0 where it does not. */
function endOfString(json: string, begin: number): number {
  let end = json.indexOf('"', begin + 1)
  while (end > 0) {
    let first = end
    while (json.charCodeAt(first - 1) === 0x5c) first -= 1
    if ((end - first) % 2 === 0) return end
    end = json.indexOf('"', end + 1)
  }
  return end
}

/** Throws an ApiError where a JSON text is nested deeper than any document. */
export function refuseDepth(json: string): void {
  const depth = nesting(json)
  if (depth <= deepest) return
  const message = `The body is nested ${depth} levels deep; no document is deeper than ${deepest}`
  throw new ApiError({ code: 'malformed', message, path: [] })
}

/** Why a text that was refused is no JSON; one that is must have used a name that every object has already. */
function notValid(json: string): Failure {
  let reason = 'it uses __proto__ or constructor as a name'
  try {
    JSON.parse(json)
  } catch (error) {
    reason = (error as Error).message
      .replace(/( in JSON|, ")[\s\S]*$/, '')
      .replace(/^./, (first) => first.toLowerCase())
  }
  return { code: 'malformed', message: `The body is not valid JSON: ${reason}`, path: [] }
}

/** A JSON text as a value. Throws an ApiError where it is too deep or no JSON. */
export function parsed(json: string): unknown {
  refuseDepth(json)
  try {
    return JSON.parse(json)
  } catch {
    throw new ApiError(notValid(json))
  }
}

/** Leaves JSON bodies as bytes to the routes, which read them by `parsed`. */
export function keepBytes(app: FastifyInstance): void {
  app.removeAllContentTypeParsers()
  app.addContentTypeParser('application/json', { parseAs: 'buffer', bodyLimit }, (_request, body, done) => {
    done(null, body)
  })
  app.addContentTypeParser('*', (_request, _payload, done) => done(new ApiError(notJson)))
}

/** Reads JSON bodies only, and refuses what is too deep or no JSON with a sentence. `asText` leaves parsing to the route. */
export function readJson(app: FastifyInstance, asText = false): void {
  const parse = app.getDefaultJsonParser('error', 'error')
  app.removeAllContentTypeParsers()
  app.addContentTypeParser('application/json', { parseAs: 'string', bodyLimit }, (request, body, done) => {
    try {
      refuseDepth(body as string)
    } catch (error) {
      done(error as Error)
      return
    }
    parse(request, body as string, (error, value) => {
      if (error) done(new ApiError(notValid(body as string)))
      else done(null, asText ? body : value)
    })
  })
  app.addContentTypeParser('*', (_request, _payload, done) => done(new ApiError(notJson)))
}
