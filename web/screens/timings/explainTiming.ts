import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { MechanismAnswer, Part, Uncertain } from '../../../src/model/timing/index.ts'
import { valueAt } from '../../data/place.ts'
import { words } from '../../words/catalogue.ts'
import type { Explanation } from '../../words/explain.ts'
import { plain } from '../../words/format.ts'
import { hundredths } from './hundredths.ts'
import { formOf, type InputNumber, kindOf, numbersIn } from './inputs.ts'
import { fieldWords } from './MechanismForm.tsx'
import { numbersInWords } from './PartField.tsx'
import { numberWords } from './problems.ts'
import { quantitySum } from './quantitySum.ts'

/** How a mechanism's time came about: its law in words, the drive's two stretches, and every number that goes in. */
export function explainTiming(
  mechanism: Mechanism,
  answer: MechanismAnswer & { possible: true },
  of: { source: string; stopwatch: string },
): Explanation {
  const texts = words().timings.explain
  const kind = kindOf(mechanism)
  const { quantities } = answer
  return {
    title: texts.title(mechanism.name),
    result: words().timings.panel.seconds(hundredths(answer.seconds)),
    formula: texts.formula[kind],
    parts:
      'runningSeconds' in quantities
        ? [
            { label: texts.running, value: hundredths(quantities.runningSeconds) },
            { label: texts.braking, value: hundredths(quantities.brakingSeconds) },
          ]
        : [],
    ...('runningSeconds' in quantities && { total: { label: texts.total, value: hundredths(answer.seconds) } }),
    inputs: inputsOf(mechanism),
    source: [texts.source, of.source].join(' '),
    otherwise: texts.otherwise,
    links: [[of.stopwatch, words().explainDesigns.toStopwatch]],
  }
}

/** How one of the numbers to check came about: what it is, what it is made of or read off, and every number that goes in. */
export function explainQuantity(
  mechanism: Mechanism,
  answer: MechanismAnswer & { quantities: object },
  of: { key: string; what: string; much: string; source: string },
): Explanation {
  const { explain: texts, how } = words().timings
  const seconds = 'seconds' in answer ? answer.seconds : null
  const sum = quantitySum(mechanism, answer.quantities, { key: of.key, seconds })
  const told: { readonly [key: string]: string } = how.of
  return {
    title: texts.quantity(of.what, mechanism.name),
    result: of.much,
    formula: [told[`${mechanism.calculator}.${of.key}`] ?? told[of.key], texts.formula[kindOf(mechanism)]].join(' '),
    parts: (sum?.terms ?? []).map(({ by, what, shown }, index) => ({
      label: index === 0 ? what : `${by} ${what}`,
      value: shown,
    })),
    ...(sum && { total: { label: sum.total.what, value: sum.total.shown } }),
    inputs: inputsOf(mechanism),
    source: [texts.source, of.source].join(' '),
    otherwise: texts.checkOtherwise,
  }
}

/** Every number that goes into a mechanism, its parts by their names. */
function inputsOf(mechanism: Mechanism): Explanation['inputs'] {
  const kind = kindOf(mechanism)
  const { input } = mechanism
  const parts = formOf[kind].flatMap(({ fields }) =>
    fields.flatMap((field) => {
      const part = field.kind === 'part' ? (valueAt(input, [field.key]) as Part | undefined) : undefined
      return part ? [{ label: part.name, value: numbersInWords(part) }] : []
    }),
  )
  const numbers = numbersIn(kind).flatMap((number) => {
    const value = valueAt(input, number.key.split('.')) as Uncertain | null | undefined
    if (value === null || value === undefined) return []
    return [{ label: fieldWords(mechanism.calculator, number.key).label, value: uncertainWords(value, number) }]
  })
  return [...parts, ...numbers]
}

/** A number as its field writes it, with its spread where it has one. */
function uncertainWords(value: Uncertain, number: InputNumber): string {
  const texts = words().timings.explain
  if (typeof value === 'number') return numberWords(value, number)
  if (value.kind === 'lognormal') return texts.within(numberWords(value.median, number), plain(value.spread, 3))
  return texts.range(
    ...([value.low, value.likely, value.high].map((each) => numberWords(each, number)) as [string, string, string]),
  )
}
