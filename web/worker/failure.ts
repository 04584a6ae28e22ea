import { isOutOfMemory, ModelError } from '../../src/model/errors.ts'
import type { Failure } from './protocol.ts'

/** An error in a form that survives the way out of a worker. */
export function failureOf(error: unknown): Failure {
  if (error instanceof ModelError)
    return { code: error.code, message: error.message, path: error.path, said: error.said }
  const code = isOutOfMemory(error) ? 'outOfMemory' : 'unexpected'
  return { code, message: error instanceof Error ? error.message : String(error) }
}

/** The computation could not be done; the message is for the person. */
export class ModelFailure extends Error {
  readonly failure: Failure
  constructor(failure: Failure) {
    super(failure.message)
    this.name = 'ModelFailure'
    this.failure = failure
  }
}
