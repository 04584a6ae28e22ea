import type { CompareReport, Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import type { PlanReport } from '../../src/model/plan/types.ts'
import { sayQuantity } from '../units/write.ts'
import { placeName } from './actions.ts'
import { words } from './catalogue.ts'
import { percent, plain, points, seconds, signedPoints } from './format.ts'
import { inputWords } from './inputs.ts'
import { optionName, type Verdict } from './verdict.ts'

/** How a number came about: the formula in words, the parts of the sum, the inputs and where they come from. */
export interface Explanation {
  title: string
  result: string
  formula: string
  parts: { label: string; value: string; note?: string }[]
  total?: { label: string; value: string }
  inputs: { label: string; value: string }[]
  source: string
  /** How to have another number in its place. */
  otherwise?: string
  /** Where that is done, on other screens or further down on this one (`#id` of its heading): address and words. */
  links?: [href: string, words: string][]
}

const awardNote = (game: Game, option: Option, goal: string, pieces: number): string => {
  const award = game.goals.find(({ id }) => id === goal)?.award
  if (!award) return ''
  const text = words().explain.plan
  return award.kind === 'each'
    ? text.each(points(pieces), plain(award.teleop))
    : text.held(points(pieces), plain(option.holdSeconds[goal] ?? 0), plain(award.teleopPerSecond))
}

export const robotInputs = (option: Option): Explanation['inputs'] => {
  const { drive, form } = option.robot
  const text = words().explain.robot
  const acceleration = (value: number) => sayQuantity(value, 'acceleration')
  return [
    { label: text.robot, value: option.robot.name },
    { label: text.topSpeed, value: sayQuantity(drive.topSpeed, 'speed') },
    { label: text.acceleration, value: [drive.acceleration, drive.deceleration].map(acceleration).join(', ') },
    { label: text.form, value: `× ${plain(form.spread)}` },
    // Who can not finish has nothing to choose there.
    ...(Object.keys(option.robot.finish).length > 0 ? [{ label: text.finish, value: finishWords(option) }] : []),
  ]
}

export function finishWords({ finish }: Pick<Option, 'finish'>): string {
  const text = words().explain.finish
  return finish.mode === 'always' ? text.always(seconds(finish.at)) : text[finish.mode]
}

/** The expected points of one option in one match. */
export function explainPlan(game: Game, option: Option, report: PlanReport, source: string): Explanation {
  const { expected } = report
  const text = words().explain.plan
  const whole = words().explain.option
  const parts = [
    { label: text.autonomous, value: points(expected.autonomous) },
    ...Object.entries(expected.goals).map(([id, goal]) => ({
      label: placeName(game, id),
      value: points(goal.points),
      note: awardNote(game, option, id, goal.pieces),
    })),
    ...Object.entries(expected.finishes).map(([id, finish]) => ({
      label: placeName(game, id),
      value: points(finish.points),
      note: text.tried(percent(Math.min(1, finish.attempts))),
    })),
    ...(expected.adjust === 0 ? [] : [{ label: text.adjusted, value: points(expected.adjust) }]),
  ]
  return {
    title: whole.title(option.name),
    result: whole.result(points(expected.total), points(report.p10), points(report.p90)),
    formula: text.formula,
    parts,
    total: { label: text.total, value: points(expected.total) },
    inputs: robotInputs(option),
    source,
  }
}

/** The lead of the best option over the next. */
export function explainLead(
  report: CompareReport,
  options: readonly Option[],
  found: Verdict,
  source: string,
): Explanation {
  const mean = (id: string | null) => report.options.find((option) => option.id === id)
  const text = words().explain.lead
  const [best, second] = [mean(found.best), mean(found.second)]
  const parts = [best, second].flatMap((summary, index) =>
    summary
      ? [
          {
            label: index === 0 ? optionName(options, summary.id) : text.less(optionName(options, summary.id)),
            value: points(summary.mean),
            note: text.between(points(summary.p10), points(summary.p90)),
          },
        ]
      : [],
  )
  return {
    title: text.title,
    result: text.result(signedPoints(found.lead)),
    formula: text.formula,
    parts,
    total: { label: text.total, value: signedPoints(found.lead) },
    inputs: [],
    source,
  }
}

/** The chance that an option is the best, and what it would be worth to know more. */
export function explainChance(
  report: CompareReport,
  inputs: readonly Input[],
  documents: { game: Game; options: Option[] },
  source: string,
): Explanation {
  const belief = report.belief
  const text = words().explain.chance
  return {
    title: text.title,
    result: belief ? percent(Math.max(...Object.values(belief.best))) : text.none,
    formula: text.formula,
    parts: Object.entries(belief?.best ?? {}).map(([id, chance]) => ({
      label: optionName(documents.options, id),
      value: percent(chance),
      note: text.regret(points(belief?.regret[id] ?? 0)),
    })),
    inputs: inputs.map((input) => {
      const { name, say } = inputWords(input, documents)
      return { label: name, value: text.believed(say(input.low), say(input.high), say(input.likely)) }
    }),
    source,
  }
}
