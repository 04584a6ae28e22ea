import type { CompareReport, Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import type { PlanReport } from '../../src/model/plan/types.ts'
import { placeName } from './actions.ts'
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
}

const awardNote = (game: Game, goal: string, pieces: number): string => {
  const award = game.goals.find(({ id }) => id === goal)?.award
  if (!award) return ''
  return award.kind === 'each'
    ? `${points(pieces)} pieces in teleop × ${award.teleop} points`
    : `${points(pieces)} pieces in teleop, ${award.teleopPerSecond} points a second held`
}

export const robotInputs = (option: Option): Explanation['inputs'] => {
  const { drive, form } = option.robot
  return [
    { label: 'Robot', value: option.robot.name },
    { label: 'Top speed', value: `${plain(drive.topSpeed)} m/s` },
    { label: 'Acceleration, braking', value: `${plain(drive.acceleration)}, ${plain(drive.deceleration)} m/s²` },
    { label: 'Spread of form', value: `× ${plain(form.spread)}` },
    { label: 'Finish', value: finishWords(option) },
  ]
}

export const finishWords = (option: Pick<Option, 'finish'>): string =>
  option.finish.mode === 'always'
    ? `always at ${seconds(option.finish.at)} left`
    : option.finish.mode === 'skip'
      ? 'left out'
      : 'when it pays'

/** The expected points of one option in one match. */
export function explainPlan(game: Game, option: Option, report: PlanReport, source: string): Explanation {
  const { expected } = report
  const parts = [
    { label: 'Autonomous', value: points(expected.autonomous) },
    ...Object.entries(expected.goals).map(([id, goal]) => ({
      label: placeName(game, id),
      value: points(goal.points),
      note: awardNote(game, id, goal.pieces),
    })),
    ...Object.entries(expected.finishes).map(([id, finish]) => ({
      label: placeName(game, id),
      value: points(finish.points),
      note: `tried in ${percent(Math.min(1, finish.attempts))} of matches`,
    })),
    ...(expected.adjust === 0 ? [] : [{ label: 'Adjusted by hand', value: points(expected.adjust) }]),
  ]
  return {
    title: `Expected points: ${option.name}`,
    result: `${points(expected.total)} points a match; 8 of 10 matches between ${points(report.p10)} and ${points(report.p90)}`,
    formula:
      'At every moment the robot does what is worth most for the time left: for each possible trip, the points it brings times its chance, plus what the time after it is still worth. The parts below are what that brings on average.',
    parts,
    total: { label: 'Expected points', value: points(expected.total) },
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
  const [best, second] = [mean(found.best), mean(found.second)]
  const parts = [best, second].flatMap((summary, index) =>
    summary
      ? [
          {
            label: `${index === 0 ? '' : 'less '}${optionName(options, summary.id)}`,
            value: points(summary.mean),
            note: `8 of 10 matches between ${points(summary.p10)} and ${points(summary.p90)}`,
          },
        ]
      : [],
  )
  return {
    title: 'The lead',
    result: `${signedPoints(found.lead)} points a match`,
    formula:
      'Expected points of the best option less those of the next, each option played as well as its robot can, every number as its documents say.',
    parts,
    total: { label: 'Lead', value: signedPoints(found.lead) },
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
  return {
    title: 'Chance of being the better choice',
    result: belief ? percent(Math.max(...Object.values(belief.best))) : 'not computed',
    formula:
      'Each unknown is drawn from what you believe about it, 2,000 times, all options on the same draws; counted is how often each option has the most expected points.',
    parts: Object.entries(belief?.best ?? {}).map(([id, chance]) => ({
      label: optionName(documents.options, id),
      value: percent(chance),
      note: `${points(belief?.regret[id] ?? 0)} points a match lost on average if it is chosen and another would have been better`,
    })),
    inputs: inputs.map((input) => {
      const words = inputWords(input, documents)
      return {
        label: words.name,
        value: `${words.say(input.low)} to ${words.say(input.high)}, likely ${words.say(input.likely)}`,
      }
    }),
    source,
  }
}
