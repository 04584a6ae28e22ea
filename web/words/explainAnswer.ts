import type { BeliefReport, CompareReport, Input, OptionSummary } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { words } from './catalogue.ts'
import { type Explanation, robotInputs } from './explain.ts'
import { percent, plain, points, signedPoints } from './format.ts'
import { type InputWords, inputWords } from './inputs.ts'
import { optionName, turning, type Verdict } from './verdict.ts'

interface Documents {
  game: Game
  options: Option[]
}

/** One option's line over the values of one unknown. */
interface Line {
  name: string
  at: readonly (readonly [number, number])[]
}

const believed = (inputs: readonly Input[], documents: Documents): Explanation['inputs'] =>
  inputs.map((input) => {
    const { name, say } = inputWords(input, documents)
    return { label: name, value: `${say(input.low)} – ${say(input.likely)} – ${say(input.high)}` }
  })

/** On the straight line between the two points of the curve around a value. */
function along({ at }: Line, value: number): number {
  const after = Math.max(
    1,
    at.findIndex(([x]) => x >= value),
  )
  const [[x0, y0], [x1, y1]] = [at[after - 1]!, at[after]!]
  return y0 + ((y1 - y0) * (value - x0)) / (x1 - x0 || 1)
}

/** Where one unknown turns the answer, with what each option is worth there and at its low, likely and high value. */
export function explainTurn(
  report: CompareReport,
  input: Input,
  documents: Documents,
  drawn: { lines: readonly Line[]; source: string },
): Explanation {
  const text = words().explainNumbers.turn
  const { name, say } = inputWords(input, documents)
  const crossings = report.breakEven?.input === input.id ? report.breakEven.crossings : []
  const values = [
    { label: text.low(say(input.low)), value: input.low },
    { label: text.likely(say(input.likely)), value: input.likely },
    ...crossings.map(({ value }) => ({ label: text.crossing(say(value)), value })),
    { label: text.high(say(input.high)), value: input.high },
  ].sort((a, b) => a.value - b.value)
  return {
    title: text.title(name),
    result: turning(report, input, documents).slice(0, Math.max(1, crossings.length)).join(' '),
    formula: text.formula,
    parts: values.map(({ label, value }) => ({
      label,
      value: drawn.lines.map((line) => points(along(line, value))).join(' : '),
      note: drawn.lines.map((line) => line.name).join(' : '),
    })),
    inputs: believed([input], documents),
    source: drawn.source,
  }
}

/** One option's points, from its exact distribution. */
export function explainOption(summary: OptionSummary, options: readonly Option[], source: string): Explanation {
  const text = words().explain.option
  const option = options.find(({ id }) => id === summary.id)
  return {
    title: text.title(optionName(options, summary.id)),
    result: text.result(points(summary.mean), points(summary.p10), points(summary.p90)),
    formula: text.formula,
    parts: [
      { label: text.mean, value: points(summary.mean) },
      { label: text.deviation, value: points(summary.sd) },
      { label: text.low, value: points(summary.p10) },
      { label: text.middle, value: points(summary.p50) },
      { label: text.high, value: points(summary.p90) },
    ],
    inputs: option ? robotInputs(option) : [],
    source,
  }
}

/** The share of single matches in which each option of a pair scores more than the other. */
export function explainAhead(
  report: CompareReport,
  pair: readonly [string, string],
  options: readonly Option[],
  source: string,
): Explanation {
  const text = words().explainNumbers.ahead
  const ahead = (a: string, b: string) => percent(report.beats[a]?.[b] ?? 0)
  const [one, other] = pair
  return {
    title: text.title,
    result: `${optionName(options, one)}: ${ahead(one, other)}`,
    formula: text.formula,
    parts: [
      { label: optionName(options, one), value: ahead(one, other) },
      { label: optionName(options, other), value: ahead(other, one) },
    ],
    inputs: [],
    source,
  }
}

/** What it would be worth to know everything, or one unknown, before deciding. */
export function explainKnowing(
  belief: BeliefReport,
  inputs: readonly Input[],
  documents: Documents,
  source: string,
): Explanation {
  const text = words().explainNumbers.knowing
  const parts = inputs.map((input) => ({ input, estimate: belief.evppi[input.id] ?? { value: 0, standardError: 0 } }))
  return {
    title: text.title,
    result: `${text.result(points(belief.evpi.value))} (${text.error(plain(belief.evpi.standardError))})`,
    formula: text.formula,
    parts: parts
      .sort((a, b) => b.estimate.value - a.estimate.value)
      .map(({ input, estimate }) => ({
        label: inputWords(input, documents).name,
        value: points(estimate.value),
        note: text.error(plain(estimate.standardError)),
      })),
    inputs: believed(inputs, documents),
    source,
  }
}

/** What so many measurements of an unknown are worth. */
export function explainMeasuring(
  belief: BeliefReport,
  inputs: readonly Input[],
  documents: Documents,
  of: { result: string; source: string },
): Explanation {
  const text = words().explainNumbers.measuring
  const named = inputs.map((input) => ({ input, words: inputWords(input, documents) }))
  const spread = (input: Input, { say, measure }: InputWords) =>
    measure === 'factor' || measure === 'probability' ? plain(input.perMeasurement!) : say(input.perMeasurement!)
  return {
    title: text.title,
    result: of.result,
    formula: text.formula,
    parts: named.flatMap(({ input, words: { name } }) =>
      (belief.evsi[input.id] ?? []).map(([count, value]) => ({ label: text.times(name, count), value: points(value) })),
    ),
    inputs: named.flatMap((entry) =>
      entry.input.perMeasurement === undefined
        ? []
        : [{ label: text.spread(entry.words.name), value: spread(entry.input, entry.words) }],
    ),
    source: of.source,
  }
}

/** By how much each unknown alone moves the lead of the best option. */
export function explainSwing(
  bars: readonly { name: string; low: string; high: string; difference: readonly [number, number] }[],
  of: { lead: number; found: Verdict; options: readonly Option[]; source: string },
): Explanation {
  const text = words().explainNumbers.swing
  return {
    title: text.title,
    result: `${optionName(of.options, of.found.best)}: ${text.result(signedPoints(of.lead))}`,
    formula: text.formula,
    parts: bars.map((bar) => ({
      label: bar.name,
      value: bar.difference.map(signedPoints).join(' … '),
      note: text.range(bar.low, bar.high),
    })),
    inputs: [],
    source: of.source,
  }
}
