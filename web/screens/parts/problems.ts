import type { Path, Problem } from '../../../src/model/errors.ts'
import { type PartFault, partFaults } from '../../../src/model/timing/partFaults.ts'
import type { Part } from '../../../src/model/timing/parts.ts'
import { airFlow, current, partLength, pressure } from '../../units/measures.ts'
import type { Measured } from '../../units/quantities.ts'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'

const quantityOf: { readonly [rule in PartFault['rule']]: Measured } = {
  freeCurrent: current,
  rod: partLength,
  pressure,
  flow: airFlow,
}

/** The longest texts that a part may have. */
const longest = { name: 200, source: 500 } as const

/** Whether a text is a day of the calendar: year-month-day. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false
  const date = new Date(`${text}T00:00:00Z`)
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text)
}

/** What is wrong with a part whose numbers are within their limits, in the reader's words and units; paths within the part. */
export function partProblems(part: Part): Problem[] {
  const texts = words().parts
  const problem = (path: Path, message: string): Problem => ({ path, message })
  const long = (['name', 'source'] as const).filter((key) => part[key].length > longest[key])
  return [
    ...long.map((key) => problem([key], texts.tooLong(longest[key], part[key].length))),
    ...(isDay(part.date) ? [] : [problem(['date'], texts.noDate)]),
    ...partFaults(part).map(({ path, rule, bound, got }) => {
      const say = (value: number) => sayQuantity(value, quantityOf[rule])
      return problem(path, texts.faults[rule](say(bound), say(got)))
    }),
  ]
}
