import type { StatedField } from '../../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import type { StatedReport } from '../../../../src/model/match/stated/types.ts'
import { words } from '../../../words/catalogue.ts'
import type { Explanation } from '../../../words/explain.ts'
import { plain } from '../../../words/format.ts'
import { optionName } from '../../../words/verdict.ts'
import { differenceSaid, type Played, type Standing, signed, valueSaid } from './standing.ts'

export interface Explained {
  report: StatedReport
  measure: Played
  documents: { game: Game; options: readonly Option[] }
  field: StatedField | null
  source: string
}

/** Who plays with and against each option, on which luck. */
function inputsOf({ report, field }: Explained): Explanation['inputs'] {
  const text = words().objective
  const names = (options: readonly Option[]) => options.map(({ name }) => name).join('; ')
  return [
    { label: text.explain.matches, value: plain(report.replicates) },
    { label: text.explain.luck, value: plain(report.seed) },
    ...(field
      ? [
          { label: text.partners, value: names(field.partners) },
          { label: text.opponents, value: names(field.opponents) },
          ...(field.level === null ? [] : [{ label: words().match.setup.level, value: field.level }]),
        ]
      : []),
  ]
}

/** The lead by wins or ranking points; that of ranking points as the sum of what results and each bonus bring. */
export function explainStanding(of: Explained, { best, second, lead }: Standing): Explanation {
  const { report, measure, documents } = of
  const text = words().objective.explain
  const [own, other] = [best, second].map((id) => report.options.find((option) => option.id === id)!)
  const values = [own!, other!].map((option) => ({
    label: optionName(documents.options, option.id),
    value: valueSaid(measure, option[measure]),
  }))
  return {
    title: text.title[measure],
    result: differenceSaid(measure, lead!),
    formula: text.formula[measure],
    parts: measure === 'win' ? values : [...values, ...splitOf(of, best, second!)],
    total: { label: text.lead, value: differenceSaid(measure, lead!) },
    inputs: inputsOf(of),
    source: of.source,
  }
}

/** What bonuses bring, and what is left: wins, ties and what is adjusted by hand. */
function splitOf({ report, documents }: Explained, best: string, second: string): Explanation['parts'] {
  const text = words().objective.explain
  const chance = (id: string, bonus: string) =>
    report.options.find((option) => option.id === id)?.bonuses[bonus]?.probability ?? 0
  const bonuses = documents.game.bonuses.map(({ id, name, rankingPoints }) => ({
    name,
    brings: rankingPoints * (chance(best, id) - chance(second, id)),
  }))
  const lead = report.differences[best]![second]!.rankingPoints.mean
  const left = lead - bonuses.reduce((sum, { brings }) => sum + brings, 0)
  return [
    { label: text.results, value: signed(left) },
    ...bonuses.map(({ name, brings }) => ({ label: text.bonus(name), value: signed(brings) })),
  ]
}
