import type { OptionSummary } from '../../src/model/compare/types.ts'
import type { Option } from '../../src/model/documents/types.ts'
import { words } from './catalogue.ts'
import { type Explanation, robotInputs } from './explain.ts'
import { points } from './format.ts'

/** By how much single matches of an option differ, from its exact distribution. */
export function explainSpread(option: Option, summary: Omit<OptionSummary, 'id'>, source: string): Explanation {
  const text = words().explainDesigns.spread
  const parts = words().explain.option
  return {
    title: text.title(option.name),
    result: text.result(points(summary.p10), points(summary.p90)),
    formula: text.formula,
    parts: [
      { label: parts.low, value: points(summary.p10) },
      { label: parts.middle, value: points(summary.p50) },
      { label: parts.high, value: points(summary.p90) },
      { label: parts.mean, value: points(summary.mean) },
      { label: parts.deviation, value: points(summary.sd) },
    ],
    inputs: robotInputs(option),
    source,
  }
}
