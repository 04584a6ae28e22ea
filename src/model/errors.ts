import type { AnySaid } from './said.ts'

/** Where in a document something is wrong: keys and indices from the document's root. */
export type Path = readonly (string | number)[]

/** A document that is wrong, with the field and a sentence for the person who typed it. */
export interface Problem {
  path: Path
  message: string
  /** The same as a sentence’s name and its parts, for who says it in another language or other units. */
  said?: AnySaid
}

export type ModelErrorCode =
  /** The document says something that can not be: a loop, an unknown id, a negative time. */
  | 'invalid'
  /** Understood, but there is no path, or a spot lies inside a grown obstacle. */
  | 'unreachable'
  /** Understood, but the table or the draws would exceed the computation's budget. */
  | 'overBudget'

/** The model's one error: a code, a sentence for the user and, where known, the field. */
export class ModelError extends Error {
  readonly code: ModelErrorCode
  readonly path: Path | undefined
  readonly said: AnySaid | undefined
  constructor(code: ModelErrorCode, message: string, path?: Path, said?: AnySaid) {
    super(message)
    this.name = 'ModelError'
    this.code = code
    this.path = path
    this.said = said
  }
}

/** Whether the engine refused a table, list or map beyond its own limits, or beyond the memory that is left. */
export function isOutOfMemory(error: unknown): boolean {
  const words = /allocation failed|Invalid (typed )?array (buffer )?length|maximum size exceeded/i
  return error instanceof RangeError && words.test(error.message)
}
