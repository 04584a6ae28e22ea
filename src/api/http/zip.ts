import type { FastifyInstance } from 'fastify'
import { ApiError } from '../errors.ts'

/** In its scope bodies are zip files, handed on as bytes; how large one may be says its route. */
export function readZip(scope: FastifyInstance): void {
  scope.removeAllContentTypeParsers()
  scope.addContentTypeParser('application/zip', { parseAs: 'buffer' }, (_request, body, done) => done(null, body))
  scope.addContentTypeParser('*', (_request, _payload, done) =>
    done(
      new ApiError({ code: 'notJson', message: 'The body must be a zip file, with the content type application/zip' }),
    ),
  )
}
