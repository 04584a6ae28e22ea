import type { CompareReport, Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import type { Difference } from '../data/difference.ts'
import { words } from '../words/catalogue.ts'
import { differenceWords } from '../words/differences.ts'
import { inputWords } from '../words/inputs.ts'
import { optionName } from '../words/verdict.ts'
import { type Cell, type Column, nameFrom, type TableData } from './table.ts'

const text = (name: string, title: string): Column => ({ name, title, type: 'string' })
const number = (name: string, title: string, unit?: string): Column => ({
  name,
  title,
  type: 'number',
  ...(unit ? { unit } : {}),
})

/** Options side by side, with all digits that were computed. */
export function optionsTable(report: CompareReport, options: readonly Option[], title: string): TableData {
  const { heads, units } = words().tables
  const points = (name: string, heading: string) => number(name, heading, units.pointsPerMatch)
  return {
    name: nameFrom(title),
    title,
    columns: [
      text('id', heads.id),
      text('option', heads.option),
      points('mean', heads.mean),
      points('standard_deviation', heads.deviation),
      points('p10', heads.p10),
      points('p50', heads.p50),
      points('p90', heads.p90),
      ...report.options.map(({ id }, index) =>
        number(`ahead_of_${index + 1}`, heads.aheadOf(optionName(options, id)), units.probability),
      ),
      number('best_by_belief', heads.bestByBelief, units.probability),
    ],
    rows: report.options.map((option): Cell[] => [
      option.id,
      optionName(options, option.id),
      option.mean,
      option.sd,
      option.p10,
      option.p50,
      option.p90,
      ...report.options.map(({ id }) => (id === option.id ? null : (report.beats[option.id]?.[id] ?? null))),
      report.belief?.best[option.id] ?? null,
    ]),
  }
}

/** What is believed about each unknown, in the unit of its documents. */
export function beliefsTable(
  inputs: readonly Input[],
  documents: { game: Game; options: readonly Option[] },
  title: string,
): TableData {
  const { heads, measures } = words().tables
  return {
    name: nameFrom(title),
    title,
    columns: [
      text('id', heads.id),
      text('unknown', heads.unknown),
      text('about', heads.about),
      text('measure', heads.measure),
      text('applied_as', heads.appliedAs),
      number('low', heads.low),
      number('likely', heads.likely),
      number('high', heads.high),
    ],
    rows: inputs.map((input): Cell[] => {
      const { name, about, measure } = inputWords(input, documents)
      return [input.id, name, about, measures[measure], input.as, input.low, input.likely, input.high]
    }),
  }
}

const value = (of: unknown): Cell => (of === undefined ? null : typeof of === 'string' ? of : JSON.stringify(of))

/** What differs between two documents; values other than texts as JSON. */
export function differencesTable(
  rows: readonly Difference[],
  title: string,
  head: readonly [string, string],
): TableData {
  const { heads } = words().tables
  return {
    name: nameFrom(title),
    title,
    columns: [text('where', heads.where), text('before', head[0]), text('after', head[1])],
    rows: rows.map(({ place, before, after }) => [differenceWords(place), value(before), value(after)]),
  }
}
