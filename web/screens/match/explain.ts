import type { Game } from '../../../src/model/documents/types.ts'
import type { MatchReport } from '../../../src/model/match/types.ts'
import { words } from '../../words/catalogue.ts'
import { decimal } from '../../words/decimal.ts'
import type { Explanation } from '../../words/explain.ts'
import { percent, plain, points, signedPoints } from '../../words/format.ts'
import type { PairedDifference } from './paired.ts'
import { chanceError, chanceSaid, errorOf, fineErrorOf, pointsSaid } from './said.ts'

interface Of {
  report: MatchReport
  level: string | null
  source: string
}

const inputsOf = ({ report, level }: Of): Explanation['inputs'] => {
  const text = words().match.explain
  return [
    { label: text.matches, value: plain(report.replicates) },
    { label: text.seed, value: plain(report.seed) },
    ...(level === null ? [] : [{ label: text.level, value: level }]),
  ]
}

export function explainWin(of: Of): Explanation {
  const text = words().match
  const { win, tie, loss } = of.report
  return {
    title: text.explain.win.title,
    result: text.explain.win.result(percent(win.probability), chanceError(win)),
    formula: text.explain.win.formula,
    parts: [
      { label: text.answer.winName, value: chanceSaid(win) },
      { label: text.answer.tieName, value: chanceSaid(tie) },
      { label: text.answer.lossName, value: chanceSaid(loss) },
    ],
    inputs: inputsOf(of),
    source: of.source,
  }
}

/** Our ranking points as the sum of what win, tie and loss and each bonus bring; what is left was adjusted by hand. */
export function explainRanking(game: Game, of: Of): Explanation {
  const text = words().match.explain.ranking
  const { win, tie, loss, bonuses, rankingPoints } = of.report
  const mean = rankingPoints.ours.mean
  const outcome =
    game.ranking.win * win.probability + game.ranking.tie * tie.probability + game.ranking.loss * loss.probability
  const parts = game.bonuses.map(({ id, name, rankingPoints: worth }) => ({
    name,
    value: worth * (bonuses[id]?.ours.probability ?? 0),
  }))
  const left = mean - outcome - parts.reduce((sum, { value }) => sum + value, 0)
  return {
    title: text.title,
    result: text.result(decimal(mean, 2), fineErrorOf(rankingPoints.ours)),
    formula: text.formula,
    parts: [
      { label: text.outcome, value: decimal(outcome, 2) },
      ...parts.map(({ name, value }) => ({ label: text.bonus(name), value: decimal(value, 2) })),
      ...(Math.abs(left) >= 0.005 ? [{ label: text.adjust, value: decimal(left, 2) }] : []),
    ],
    total: { label: text.total, value: decimal(mean, 2) },
    inputs: inputsOf(of),
    source: of.source,
  }
}

export function explainMargin(of: Of): Explanation {
  const text = words().match.explain.margin
  const { score, margin } = of.report
  return {
    title: text.title,
    result: text.result(signedPoints(margin.mean), errorOf(margin)),
    formula: text.formula,
    parts: [
      { label: text.ours, value: pointsSaid(score.ours) },
      { label: text.theirs, value: pointsSaid(score.theirs) },
      { label: text.spread, value: points(margin.sd) },
    ],
    total: { label: text.lead, value: signedPoints(margin.mean) },
    inputs: inputsOf(of),
    source: of.source,
  }
}

/** `second` is the report of the line-up beside `of.report`; the difference is the second's lead less the first's. */
export function explainDifference(second: MatchReport, difference: PairedDifference, of: Of): Explanation {
  const text = words().match.explain.difference
  const { mean, ahead, level } = difference
  const apart = Math.hypot(of.report.margin.standardError, second.margin.standardError)
  return {
    title: text.title,
    result: text.result(signedPoints(mean.mean), errorOf(mean)),
    formula: text.formula,
    parts: [
      { label: text.more, value: percent(ahead.probability) },
      { label: text.level, value: percent(level.probability) },
      { label: text.less, value: percent(Math.max(0, 1 - ahead.probability - level.probability)) },
      { label: text.apart, value: errorOf({ standardError: apart }) },
    ],
    inputs: inputsOf(of),
    source: of.source,
  }
}
