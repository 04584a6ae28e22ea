import type { Problem } from '../../src/model/errors.ts'
import type { AnySaid } from '../../src/model/said.ts'
import type { Quantity } from '../units/quantities.ts'
import { sayQuantity } from '../units/write.ts'
import { type Words, words } from './catalogue.ts'
import { plain } from './format.ts'

type Parts = { readonly [part: string]: unknown }

/** Sentences about the field: everything in them that is a number is a length. */
const aboutLengths = ['outside', 'noWay', 'wayBlocked', 'tooNear']

/** What the numbers of a sentence about a field of a document measure, where that has other units elsewhere. */
const measured: readonly (readonly [field: RegExp, quantity: Quantity])[] = [
  [/^(length|width|clearance|(at|outline)\[.+)$/, 'length'],
  [/^topSpeed$/, 'speed'],
  [/^(acceleration|deceleration)$/, 'acceleration'],
  [/^mass$/, 'mass'],
]

function quantityOf({ code, parts }: AnySaid): Quantity | null {
  if (aboutLengths.includes(code)) return 'length'
  const { name } = parts as Parts
  const found = code === 'outOfRange' && measured.find(([field]) => field.test(String(name)))
  return found ? found[1] : null
}

const isInner = (value: unknown): value is AnySaid & { text: string } =>
  typeof value === 'object' && value !== null && 'code' in value && 'text' in value

/** The parts of a sentence as its text wants them: numbers written, sentences within it said. */
function told(said: AnySaid): Parts {
  const quantity = quantityOf(said)
  const tell = (value: unknown): unknown => {
    if (typeof value === 'number') return quantity ? sayQuantity(value, quantity) : plain(value, 4)
    if (Array.isArray(value)) return value.map(tell)
    return isInner(value) ? problemWords({ message: value.text, said: value }) : value
  }
  return Object.fromEntries(Object.entries(said.parts).map(([part, value]) => [part, tell(value)]))
}

/**
 * What is wrong with a document, or why something is refused, in the reader's language and units; the sentence as it came
 * where it is not one of those that the catalogue has, or where the catalogue is not loaded yet.
 */
export function problemWords({ message, said }: Pick<Problem, 'message' | 'said'>): string {
  const { problems } = words() as Partial<Words>
  if (!said || !problems || !Object.hasOwn(problems, said.code)) return message
  const say = problems[said.code as keyof typeof problems] as (parts: Parts) => string
  return say(told(said))
}

/** The same problems with their sentences so. */
export const problemsInWords = <Found extends Problem>(problems: readonly Found[]): Found[] =>
  problems.map((problem) => ({ ...problem, message: problemWords(problem) }))

interface Refused {
  code: string
  message: string
  said?: AnySaid | undefined
  problems?: readonly Problem[]
}

/** Why something was refused, in the reader's language: by its sentence, or else by the code of the refusal. */
export function refusalWords({ code, message, said = undefined, problems = [] }: Refused): string {
  const sentence = said ? { message, said } : problems[0]
  const inWords = sentence?.said ? problemWords(sentence) : message
  if (inWords !== message) return inWords
  const { refusals } = words()
  const known = Object.hasOwn(refusals, code) ? refusals[code as keyof typeof refusals] : null
  return known ? known(message) : message
}
