import type { CompareReport } from '../../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import type { Mean, Objective, StatedReport } from '../../../../src/model/match/stated/types.ts'
import { words } from '../../../words/catalogue.ts'
import { decimal } from '../../../words/decimal.ts'
import { percent, signedPoints } from '../../../words/format.ts'
import { isNothing, optionName } from '../../../words/verdict.ts'
import { chanceSaid, errorOf, fineErrorOf } from '../../match/said.ts'

/** What is judged by whole matches. */
export type Played = Exclude<Objective, 'points'>

export interface Standing {
  best: string
  second: string | null
  lead: Mean | null
}

/** A difference is told from chance beyond so many standard errors. */
const sure = 2

export const isSettled = ({ mean, standardError }: Mean): boolean => Math.abs(mean) > sure * standardError

/** The best option by wins or ranking points, and by how much. */
export function standingBy({ options, differences }: StatedReport, measure: Played): Standing | null {
  const [best, second] = [...options].sort((a, b) => b[measure].mean - a[measure].mean)
  if (!best) return null
  return {
    best: best.id,
    second: second?.id ?? null,
    lead: second ? differences[best.id]![second.id]![measure] : null,
  }
}

/** To hundredths with its sign: '+0.15'. */
export const signed = (value: number): string =>
  `${value >= 0.005 ? '+' : ''}${decimal(value, 2).replace('-', '\u2212')}`

/** '+0.15 ± 0.01', '+5.0 % ± 0.2 %': on shared luck a difference of chances is known to tenths of a per cent. */
export const differenceSaid = (measure: Played, { mean, standardError }: Mean): string => {
  const percents = measure === 'win'
  const shown = percents ? `${signedPoints(100 * mean)}\u00a0%` : signed(mean)
  if (standardError === 0) return shown
  return percents
    ? `${shown} ± ${errorOf({ standardError: 100 * standardError })}\u00a0%`
    : `${shown} ± ${fineErrorOf({ standardError })}`
}

/** '49 % ± 1 %', '2.26 ± 0.01'. */
export const valueSaid = (measure: Played, { mean, standardError }: Mean): string => {
  if (measure === 'win') return chanceSaid({ probability: mean, standardError })
  return standardError === 0 ? decimal(mean, 2) : `${decimal(mean, 2)} ± ${fineErrorOf({ standardError })}`
}

/** The headline in words: who is ahead by the objective, or that matches do not tell the two apart. */
export function headlineBy(report: StatedReport, measure: Played, options: readonly Option[]): string {
  const found = standingBy(report, measure)
  const text = words().objective
  if (!found) return ''
  const best = optionName(options, found.best)
  if (!found.second || !found.lead) return text.alone(text.by[measure], best)
  const lead = differenceSaid(measure, found.lead)
  return isSettled(found.lead)
    ? text.ahead(text.by[measure], best, lead)
    : text.level(text.by[measure], best, optionName(options, found.second), lead)
}

/**
 * Whether points say the same, in sentences: where they do not, who is ahead by each, and what brings the ranking points or
 * wins that the points do not show.
 */
export function againstPoints(
  report: CompareReport & { field: StatedReport },
  measure: Played,
  documents: { game: Game; options: readonly Option[] },
): { disagree: boolean; sentences: string[] } {
  const { options } = documents
  const text = words().objective
  const found = standingBy(report.field, measure)
  const leader = [...report.options].sort((a, b) => b.mean - a.mean)[0]
  if (!found?.second || !found.lead || !leader) return { disagree: false, sentences: [] }
  const name = (id: string) => optionName(options, id)
  const mean = (id: string) => report.options.find((option) => option.id === id)?.mean ?? 0
  if (leader.id === found.best) {
    const next = Math.max(...report.options.filter(({ id }) => id !== leader.id).map((option) => option.mean))
    return { disagree: false, sentences: [text.same(name(leader.id), signedPoints(leader.mean - next))] }
  }
  const lead = report.field.differences[found.best]![leader.id]![measure]
  const points = leader.mean - mean(found.best)
  if (isNothing(points)) return { disagree: false, sentences: [text.pointsLevel(name(leader.id), name(found.best))] }
  if (!isSettled(lead)) return { disagree: false, sentences: [text.notSure(name(leader.id), signedPoints(points))] }
  const said = {
    by: text.by[measure],
    points: name(leader.id),
    pointsLead: signedPoints(points),
    best: name(found.best),
    lead: differenceSaid(measure, lead),
  }
  return {
    disagree: true,
    sentences: [text.disagree(said), ...because(report.field, [found.best, leader.id], measure, documents)],
  }
}

/** What sets the two apart: the bonus that brings most, and what wins say. */
function because(
  report: StatedReport,
  [best, other]: [string, string],
  measure: Played,
  { game }: { game: Game },
): string[] {
  const text = words().objective
  const [own, its] = [best, other].map((id) => report.options.find((option) => option.id === id)!)
  if (!own || !its) return []
  if (measure === 'win') return [text.wins(percent(own.win.mean), percent(its.win.mean))]
  const [bonus] = game.bonuses
    .map(({ id, name, rankingPoints }) => {
      const [with_, without] = [own.bonuses[id]?.probability ?? 0, its.bonuses[id]?.probability ?? 0]
      return { name, with_, without, brings: rankingPoints * (with_ - without) }
    })
    .sort((a, b) => b.brings - a.brings)
  const won = report.differences[best]![other]!.win
  return [
    ...(bonus && bonus.brings > 0.005 ? [text.bonus(bonus.name, percent(bonus.with_), percent(bonus.without))] : []),
    ...(won.mean < 0 && isSettled(won) ? [text.winsFewer(differenceSaid('win', won))] : []),
  ]
}
