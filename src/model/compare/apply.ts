import { inner, innerOf, refusal } from '../documents/sentences.ts'
import type { Game, Option } from '../documents/types.ts'
import { ModelError } from '../errors.ts'
import type { Inner } from '../said.ts'
import { outOfBounds } from './bounds.ts'
import { badDuration, isDuration, moved, scaled } from './inputDuration.ts'
import { changeAt, pointerTokens } from './pointer.ts'
import type { Input } from './types.ts'

/** What an input's pointers lead into. */
export interface Documents {
  game: Game
  options: readonly Option[]
}

/**
 * The documents with one input at one value: what its paths name is replaced by the value, multiplied by it, or has it
 * added. A number may be changed in all three ways; a Duration (or a stage or whole trip, of which the Duration is
 * meant) by a factor or a sum on every draw, not below 0.
 *
 * Only objects along the paths are copied; every other Duration, stage, robot and option stays the same object.
 *
 * Throws ModelError 'invalid', with the path inside the input, where a pointer leads nowhere or to something else, or
 * where the number would leave its field's bounds; the message names input and value.
 * @example applyInput({ game, options }, { id: 'grab', paths: ['/options/0/robot/…/duration'], as: 'factor', … }, 1.2)
 */
export function applyInput<T extends Documents>(documents: T, input: Input, value: number): T {
  if (!Number.isFinite(value)) throw refusal('invalid', ['notFinite', { input: input.id, value }])
  return input.paths.reduce((changed, _pointer, index) => applyPath(changed, { input, value, index }), documents)
}

interface Application {
  input: Input
  value: number
  index: number
}

function applyPath<T extends Documents>(documents: T, application: Application): T {
  const pointer = application.input.paths[application.index] as string
  const at = ['paths', application.index]
  const named = { input: application.input.id, value: application.value, pointer }
  const refuse = (why: Inner): never => {
    throw refusal('invalid', ['misplaced', { ...named, why }], at)
  }
  try {
    const root = pointerTokens(pointer)[0]
    if (root !== 'game' && root !== 'options') refuse(inner('leadsElsewhere', {}))
    const changed = changeAt(documents, pointer, (found) => changeOf(found, application, refuse))
    checkBounds(changed, pointer, refuse)
    return changed
  } catch (error) {
    if (error instanceof ModelError && error.path === undefined) {
      throw refusal('invalid', ['ofInput', { input: application.input.id, why: innerOf(error) }], at)
    }
    throw error
  }
}

function changeOf(found: unknown, { input, value }: Application, refuse: (why: Inner) => never): unknown {
  if (typeof found === 'number') {
    return input.as === 'value' ? value : input.as === 'factor' ? found * value : found + value
  }
  if (isDuration(found)) {
    if (input.as === 'value') return refuse(inner('needsFactor', {}))
    if (input.as === 'add') return moved(found, value)
    return value < 0 ? refuse(inner('negativeFactor', {})) : scaled(found, value)
  }
  for (const key of ['duration', 'whole'] as const) {
    const inner = typeof found === 'object' && found !== null ? (found as Record<string, unknown>)[key] : undefined
    if (isDuration(inner)) {
      const changed = changeOf(inner, { input, value, index: 0 }, refuse)
      return changed === inner ? found : { ...(found as object), [key]: changed }
    }
  }
  return refuse(inner('namesNothing', {}))
}

/** The innermost Duration on the path is checked as a whole, since its numbers bound each other. */
function checkBounds(documents: Documents, pointer: string, refuse: (why: Inner) => never): void {
  const tokens = pointerTokens(pointer)
  let found: unknown = documents
  for (const [depth, token] of tokens.entries()) {
    found = (found as Record<string, unknown>)[token]
    const duration = isDuration(found) ? found : durationInside(found, depth === tokens.length - 1)
    if (!duration) continue
    const problem = badDuration(duration, tokens[depth] === 'pace')
    if (problem) refuse(problem)
    return
  }
  const problem = typeof found === 'number' ? outOfBounds(pointer, found) : null
  if (problem) refuse(inner('wouldBe', { found: found as number, why: problem }))
}

function durationInside(found: unknown, isLast: boolean) {
  if (!isLast || typeof found !== 'object' || found === null) return null
  const { duration, whole } = found as { duration?: unknown; whole?: unknown }
  return isDuration(duration) ? duration : isDuration(whole) ? whole : null
}

/** The documents with every input at its value (in the inputs' order), with the path of a problem from the request's root. */
export function applyInputs<T extends Documents>(documents: T, inputs: readonly Input[], values: readonly number[]): T {
  return inputs.reduce((changed, input, index) => {
    try {
      return applyInput(changed, input, values[index] as number)
    } catch (error) {
      if (!(error instanceof ModelError)) throw error
      throw new ModelError(error.code, error.message, ['inputs', index, ...(error.path ?? [])], error.said)
    }
  }, documents)
}
