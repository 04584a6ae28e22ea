import type { CompareReport, Crossing, Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { percent, signedPoints } from './format.ts'
import { inputWords } from './inputs.ts'

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

/** 'Leave the davit out: +2.1 points a match'. */
export const headline = (found: Verdict, options: readonly Option[]): string =>
  found.second === null
    ? optionName(options, found.best)
    : `${optionName(options, found.best)}: ${signedPoints(found.lead)} points a match`

/** How sure the headline is, in one sentence. */
export function sureness(found: Verdict, options: readonly Option[]): string {
  if (found.second === null) return 'There is nothing to compare it with yet.'
  const parts: string[] = []
  if (found.chance !== null)
    parts.push(`the better choice with a chance of ${percent(found.chance)} over what you believe`)
  if (found.matches !== null)
    parts.push(`ahead of ‘${optionName(options, found.second)}’ in ${percent(found.matches)} of single matches`)
  return parts.length > 0 ? `${parts.join('; ').replace(/^./, (letter) => letter.toUpperCase())}.` : ''
}

/** Where the answer turns, in words: one sentence per crossing, or that it does not turn. */
export function turning(
  report: CompareReport,
  input: Input,
  documents: { game: Game; options: readonly Option[] },
): string[] {
  const words = inputWords(input, documents)
  const crossings = report.breakEven?.crossings ?? []
  const range = `You believe ${words.say(input.low)} to ${words.say(input.high)}, most likely ${words.say(input.likely)}.`
  if (crossings.length === 0)
    return [
      `It does not turn on ‘${words.name}’ anywhere between ${words.say(input.low)} and ${words.say(input.high)}.`,
    ]
  return [...crossings.map((crossing) => turn(crossing, input, words, documents.options)), range]
}

function turn(
  crossing: Crossing,
  input: Input,
  words: ReturnType<typeof inputWords>,
  options: readonly Option[],
): string {
  // From below to above the crossing the best option goes `from` → `to`; the answer holds on the likely value's side.
  const above = input.likely < crossing.value
  const winner = optionName(options, above ? crossing.to : crossing.from)
  const jump = crossing.jump ? ' (a jump: the best way to play changes there)' : ''
  return `It turns to ‘${winner}’ if ‘${words.name}’ is ${above ? 'more' : 'less'} than ${words.say(crossing.value)}${jump}.`
}
