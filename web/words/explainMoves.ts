import type { Game, Option } from '../../src/model/documents/types.ts'
import type { Call, PlanReport } from '../../src/model/plan/types.ts'
import type { StripBar } from '../charts/stripLayout.ts'
import { nodeWords, placeName } from './actions.ts'
import { words } from './catalogue.ts'
import { type Explanation, robotInputs } from './explain.ts'
import { points, seconds, signedPoints } from './format.ts'

/** The one call of a drive coach: its points, and those of calling three seconds early or late. */
export function explainCall(option: Option, call: Call, whenItPays: number | null, source: string): Explanation {
  const text = words().explainNumbers.call
  // Near the buzzer there are no three seconds left to be late by.
  const late = Math.max(0, call.at - 3)
  const loss = (lost: number) => text.loses(points(Math.max(0, lost)))
  return {
    title: text.title(option.name),
    result: text.result(seconds(call.at), points(call.points)),
    formula: text.formula,
    parts: [
      { label: text.at(seconds(call.at + 3)), value: points(call.points - call.early3), note: loss(call.early3) },
      { label: text.at(seconds(call.at)), value: points(call.points) },
      { label: text.at(seconds(late)), value: points(call.points - call.late3), note: loss(call.late3) },
      ...(whenItPays === null ? [] : [{ label: text.whenItPays, value: points(whenItPays) }]),
    ],
    inputs: robotInputs(option),
    source,
  }
}

/** When leaving for a finish becomes the best thing to do, from each place. */
export function explainLeaveBy(game: Game, option: Option, rows: PlanReport['leaveBy'], source: string): Explanation {
  const text = words().explainNumbers.leaveBy
  return {
    title: text.title(option.name),
    result: text.result,
    formula: text.formula,
    parts: rows.map((row) => ({
      label: `${nodeWords(game, row.node)} → ${placeName(game, row.finish)}`,
      value: seconds(row.from),
      note: text.forgone(points(row.forgone)),
    })),
    inputs: robotInputs(option),
    source,
    otherwise: text.otherwise,
    links: [
      ['/designs', words().explainDesigns.toDesigns],
      ['#own-title', text.toOwn],
    ],
  }
}

/** By how much an edit moves the expected points. */
export function explainGain(of: { now: number; saved: number; source: string }): Explanation {
  const text = words().explainNumbers.gain
  const change = signedPoints(of.now - of.saved)
  return {
    title: text.title,
    result: change,
    formula: text.formula,
    parts: [
      { label: text.now, value: points(of.now) },
      { label: text.saved, value: points(of.saved) },
    ],
    total: { label: text.change, value: change },
    inputs: [],
    source: of.source,
  }
}

/** What a second less of each stage brings. */
export function explainWorth(bars: readonly StripBar[], source: string): Explanation {
  const text = words().explainNumbers.worth
  const known = bars.filter((bar) => bar.worth !== null).sort((a, b) => b.worth! - a.worth!)
  return {
    title: text.title,
    result: text.result,
    formula: text.formula,
    parts: known.map((bar) => ({
      label: bar.name,
      value: signedPoints(bar.worth!),
      note: text.takes(seconds(bar.mean)),
    })),
    inputs: [],
    source,
  }
}
