import type { Problem } from '../../src/model/errors.ts'
import { sayQuantity } from '../units/write.ts'
import { type Words, words } from './catalogue.ts'
import { plain } from './format.ts'

type Parts = { readonly [part: string]: unknown }

/** Of what lies outside the field, everything that is a number is a length. */
const lengths = (parts: Parts): Parts => {
  const say = (value: unknown): unknown =>
    typeof value === 'number' ? sayQuantity(value, 'length') : Array.isArray(value) ? value.map(say) : value
  return Object.fromEntries(Object.entries(parts).map(([part, value]) => [part, say(value)]))
}

const numbers = (parts: Parts): Parts =>
  Object.fromEntries(
    Object.entries(parts).map(([part, value]) => [part, typeof value === 'number' ? plain(value, 4) : value]),
  )

/**
 * What is wrong with a document, in the reader's language and units; the sentence as it came where it is not one of those
 * that the catalogue has, or where the catalogue is not loaded yet.
 */
export function problemWords({ message, said }: Pick<Problem, 'message' | 'said'>): string {
  const { problems } = words() as Partial<Words>
  if (!said || !problems || !Object.hasOwn(problems, said.code)) return message
  const say = problems[said.code] as (parts: Parts) => string
  return say(said.code === 'outside' ? lengths(said.parts) : numbers(said.parts))
}

/** The same problems with their sentences so. */
export const problemsInWords = <Found extends Problem>(problems: readonly Found[]): Found[] =>
  problems.map((problem) => ({ ...problem, message: problemWords(problem) }))

/** Why something was refused, in the reader's language, by the code of the refusal. */
export function refusalWords(failure: { code: string; message: string; problems?: readonly Problem[] }): string {
  const [first] = failure.problems ?? []
  if (first?.said) return problemWords(first)
  const { refusals } = words()
  const known = Object.hasOwn(refusals, failure.code) ? refusals[failure.code as keyof typeof refusals] : null
  return known ? known(failure.message) : failure.message
}
