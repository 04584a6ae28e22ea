import type { CompareReport, Crossing, Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { words } from './catalogue.ts'
import { percent, signedPoints } from './format.ts'
import { type InputWords, inputWords } from './inputs.ts'

export interface Verdict {
  best: string
  second: string | null
  /** Expected points by which the best leads. */
  lead: number
  /** Chance that it is the best, over what is believed; null where belief was not computed. */
  chance: number | null
  /** Share of single matches in which it scores more than the second; ties count half. */
  matches: number | null
}

/** The best option of a comparison by expected points, and how sure that is. */
export function verdict(report: CompareReport): Verdict | null {
  const order = [...report.options].sort((a, b) => b.mean - a.mean)
  const [best, second] = order
  if (!best) return null
  return {
    best: best.id,
    second: second?.id ?? null,
    lead: second ? best.mean - second.mean : 0,
    chance: report.belief?.best[best.id] ?? null,
    matches: second ? (report.beats[best.id]?.[second.id] ?? null) : null,
  }
}

export const optionName = (options: readonly Option[], id: string): string =>
  options.find((option) => option.id === id)?.name ?? id

/** Whether nothing is left of a difference in points as it is shown, to a tenth. */
export const isNothing = (difference: number): boolean => Math.abs(difference) < 0.05

/** Whether the best two are level: no difference is left in what is shown of the lead. */
export const isLevel = ({ second, lead }: { second: string | null; lead: number | null }): boolean =>
  second !== null && lead !== null && isNothing(lead)

/** 'Leave the davit out: +2.1 points a match', or that the two best are level. */
export function headline(found: Verdict, options: readonly Option[]): string {
  const best = optionName(options, found.best)
  if (found.second === null) return best
  if (isLevel(found)) return words().verdict.level(best, optionName(options, found.second))
  return words().verdict.headline(best, signedPoints(found.lead))
}

/** How sure the headline is, in one sentence. */
export function sureness(found: Verdict, options: readonly Option[]): string {
  const texts = words().verdict
  if (found.second === null) return texts.alone
  const parts: string[] = []
  if (found.chance !== null) parts.push(texts.chance(percent(found.chance)))
  if (found.matches !== null) parts.push(texts.matches(optionName(options, found.second), percent(found.matches)))
  return parts.length > 0 ? `${parts.join('; ').replace(/^./, (letter) => letter.toUpperCase())}.` : ''
}

/** Where the answer turns, in words: one sentence per crossing, or that it does not turn. */
export function turning(
  report: CompareReport,
  input: Input,
  documents: { game: Game; options: readonly Option[] },
): string[] {
  const texts = words().verdict
  const { name, say } = inputWords(input, documents)
  const crossings = report.breakEven?.crossings ?? []
  const range = texts.believed(say(input.low), say(input.high), say(input.likely))
  if (crossings.length === 0) return [texts.never(name, say(input.low), say(input.high))]
  return [...crossings.map((crossing) => turn(crossing, input, { name, say }, documents.options)), range]
}

function turn(
  crossing: Crossing,
  input: Input,
  { name, say }: Pick<InputWords, 'name' | 'say'>,
  options: readonly Option[],
): string {
  // From below to above the crossing the best option goes `from` → `to`; the answer holds on the likely value's side.
  const above = input.likely < crossing.value
  const winner = optionName(options, above ? crossing.to : crossing.from)
  const texts = words().verdict
  return `${texts.turns(winner, name, above, say(crossing.value))}${crossing.jump ? texts.jump : ''}.`
}
