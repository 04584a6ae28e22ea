import type { BeliefReport, Input } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import { practiceId, practiceOf } from '../../words/practice.ts'

/** A name as it is typed, with a capital: the name of an unknown is its id, and one without is taken for no word. */
export const wordOf = (typed: string): string => typed.trim().replace(/^./u, (first) => first.toUpperCase())

/** The id that an unknown gets with a name: what a day of practice is worth stays in it. */
export function idOf(input: Input, name: string): string {
  const practice = practiceOf(input)
  return practice ? practiceId(name, practice.perDay) : name
}

const renamedKeys = <T>(of: { [id: string]: T }, now: (id: string) => string): { [id: string]: T } =>
  Object.fromEntries(Object.entries(of).map(([id, value]) => [now(id), value]))

/** What was computed of unknowns that have other names by now: in their order, then and now. */
export function beliefUnder(belief: BeliefReport, then: readonly Input[], now: readonly Input[]): BeliefReport {
  const names = new Map(then.map(({ id }, index) => [id, now[index]?.id ?? id]))
  const named = (id: string) => names.get(id) ?? id
  return { ...belief, evppi: renamedKeys(belief.evppi, named), evsi: renamedKeys(belief.evsi, named) }
}

/** Unknowns without their names, which no number hangs on. */
export const nameless = (inputs: readonly Input[]): Omit<Input, 'id'>[] => inputs.map(({ id: _, ...rest }) => rest)

/** The comparison with another id for one of its unknowns, wherever it names it; its numbers stay. */
export function withUnknownNamed(record: ComparisonRecord, index: number, id: string): ComparisonRecord {
  const before = record.inputs[index]?.id
  const named = (other: string) => (other === before ? id : other)
  const inputs = record.inputs.map((input, other) => (other === index ? { ...input, id } : input))
  const { result } = record
  return {
    ...record,
    inputs,
    breakEven: record.breakEven === null ? null : named(record.breakEven),
    result: result && {
      ...result,
      ...(result.breakEven && { breakEven: { ...result.breakEven, input: named(result.breakEven.input) } }),
      ...(result.swing && { swing: result.swing.map((row) => ({ ...row, input: named(row.input) })) }),
      ...(result.belief && { belief: beliefUnder(result.belief, record.inputs, inputs) }),
    },
  }
}
