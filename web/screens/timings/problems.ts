import { within } from '../../../src/model/documents/checkIds.ts'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Robot } from '../../../src/model/documents/types.ts'
import type { Path, Problem } from '../../../src/model/errors.ts'
import { inputFaults, type Part, type Spread } from '../../../src/model/timing/index.ts'
import { valueAt } from '../../data/place.ts'
import { unitOf } from '../../units/quantities.ts'
import { unitsShown } from '../../units/system.ts'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { partProblems } from '../parts/problems.ts'
import { formOf, type InputNumber, kindOf, numbersIn } from './inputs.ts'

/** A number of an input as its field writes it. */
export function numberWords(value: number, { quantity, percent }: InputNumber): string {
  if (quantity) return sayQuantity(value, quantity)
  return percent ? `${plain(100 * value, 4)}\u00a0%` : plain(value, 6)
}

/** A number to four digits in the units shown: rounded before, a temperature would lose one. */
export function fourDigits(value: number, number: InputNumber): string {
  const round = (of: number) => Number(of.toPrecision(4))
  if (!number.quantity) return numberWords(round(value), number)
  const { factor, offset = 0 } = unitOf(number.quantity, unitsShown())
  return numberWords(round((value - offset) / factor) * factor + offset, number)
}

/** Standard normal quantile of 0.999: as far as a log-normal has to stay within its number's limits. */
const oneInAThousand = 3.0902

/** Whether a log-normal stays within a number's limits but for one in a thousand on either side. */
export function fits({ median, spread }: { median: number; spread: number }, { min, max }: InputNumber): boolean {
  const far = spread ** oneInAThousand
  return median / far >= min && median * far <= max
}

/** What is wrong with the numbers of a mechanism that lie within their limits each; paths within the mechanism. */
function problemsOf(mechanism: Mechanism): Problem[] {
  const texts = words().timingInputs.faults
  const { input } = mechanism
  const kind = kindOf(mechanism)
  const numbers = numbersIn(kind)
  const numberOf = (path: Path) => numbers.find(({ key }) => key === path.join('.'))
  const problem = (path: Path, message: string): Problem => ({ path: ['input', ...path], message })
  const faults = inputFaults(input).flatMap(({ path, rule }): Problem[] => {
    if (rule === 'stops') return [problem(path, texts.stops)]
    if (rule === 'shotMissing') return [problem(path, texts.shotMissing)]
    const number = numberOf(path.slice(0, -1))
    if (rule === 'part' || !number) return []
    const { low, likely, high } = valueAt(input, path.slice(0, -1)) as Spread & { kind: 'range' }
    const [least, got] = path.at(-1) === 'likely' ? [low, likely] : [likely, high]
    return [problem(path, texts.order(numberWords(least, number), numberWords(got, number)))]
  })
  const tails = numbers.flatMap((number): Problem[] => {
    const path = number.key.split('.')
    const value = valueAt(input, path) as Spread | number | undefined
    if (typeof value !== 'object' || value?.kind !== 'lognormal' || fits(value, number)) return []
    return [problem([...path, 'spread'], texts.tail(numberWords(number.min, number), numberWords(number.max, number)))]
  })
  const parts = formOf[kind].flatMap(({ fields }) =>
    fields.flatMap((field) =>
      field.kind === 'part' ? within(['input', field.key], partProblems(valueAt(input, [field.key]) as Part)) : [],
    ),
  )
  return [...faults, ...tails, ...parts]
}

/** The same of all mechanisms of a robot, in the reader's words and units; paths within the robot. */
export const mechanismProblems = (robot: Robot): Problem[] =>
  (robot.mechanisms ?? []).flatMap((mechanism, index) => within(['mechanisms', index], problemsOf(mechanism)))
