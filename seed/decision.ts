import type { CompareReport, OptionSummary } from '../src/model/compare/types.ts'
import type { DecisionRecord } from '../src/model/documents/records.ts'
import { comparisonWith, hinge, question, request } from './comparison.ts'
import { comparisonAir } from './comparisonResult.ts'

const points = (value: number) => value.toFixed(1)
const percent = (value: number) => `${Math.round(value * 100)} %`

/** The season's decision, written around a computed result: every number in its sentences is taken from there. */
export function decisionWith(result: CompareReport): DecisionRecord {
  const [hook, practice] = result.options
  if (!hook || !practice) throw new Error('the comparison needs its two sisters')
  if (hook.mean >= practice.mean) throw new Error('the words below fit only where the sister without the hook leads')
  const crossing = result.breakEven?.crossings[0]
  const comparison = comparisonWith(null)
  return {
    format: 1,
    id: 'leave-the-hook-out',
    name: 'Leave the hook out for now',
    question,
    decidedOn: '2027-01-16',
    comparison: { id: comparison.id, revision: 1 },
    chosen: practice.id,
    assumptions: [
      {
        text: 'The hook costs 7.5 kg, a second gearbox and two weeks in which nobody drives.',
        source: 'Mass sheet of the mechanism group; plan on the workshop wall',
      },
      {
        text: 'Two more weeks of driving make the drives about 5 % quicker and the hands a little surer.',
        source: 'Stopwatch on last summer’s practice base, two drivers before and after ten evenings',
      },
      {
        text: 'The davit is reached and latched in about three tries of four.',
        source: 'A guess. The wooden mock-up latched 7 times of 9, but it was pushed by hand',
      },
      {
        text: 'A buoy on the lightship earns its points for about five seconds before the lead changes.',
        source: 'A guess, the same for both designs',
      },
    ],
    result: summary(hook, practice, result),
    wouldChange: [
      crossing
        ? `${hinge} of ${percent(crossing.value)} or more at match pace, on the real frame and not on the mock-up.`
        : `Nothing that we believe possible about '${hinge}' alone.`,
      'A hook that is finished without taking the practice weeks, by a second build group for example.',
      'A partner rule or ranking in which the points of the davit decide more than the match.',
    ],
    measureNext: [
      `${hinge}: 20 tries on the steel practice davit with the robot’s real weight, from the line where the drive ends, with a stopwatch. Below the lifted robot stands a rated support before anyone comes near, two people work on it, and nobody reaches under it.`,
      'Latch time in the same 20 tries.',
      'Pace of the present drivers over the course from the gantry to the outer slipway, 15 runs each.',
    ],
    objections: [
      {
        who: 'Drive coach',
        text: 'Selection will favour robots that hang.',
        answer:
          'Perhaps. That is a question of ranking and of partners, not of our points; we look again after the first event, and the frame keeps the bolt pattern for the hook.',
      },
      {
        who: 'Mentor for safety',
        text: 'A lifted robot can come down on someone, in practice more likely than in a match.',
        answer:
          'Leaving the hook out removes that for now. For the test davit: drum locked, a support rated for the robot’s weight under it, two people with eye protection, power off before hands go near. The event’s rules and the mentor responsible for safety decide, not this sheet.',
      },
      {
        who: 'Mechanism lead',
        text: 'The numbers are ours, and we like the simple robot.',
        answer:
          'So the simple robot had to win with the hang set where its friends put it. It did, narrowly, and the sheet says at which number it would lose.',
      },
    ],
    agreed: [
      { who: 'Strategy lead', on: '2027-01-16T15:20Z' },
      { who: 'Mechanism lead', on: '2027-01-16T15:24Z' },
      { who: 'Mentor for safety', on: '2027-01-17T18:05Z' },
    ],
    checkAtEvent:
      'One person of the pit crew writes the lines down after each match; the strategy lead reads them twice a day.',
    checks: [
      {
        quantity: 'Our own points in a match',
        expected: `${points(practice.mean)} on average; 8 of 10 matches between ${points(practice.p10)} and ${points(practice.p90)}`,
        when: 'After our first six matches',
      },
      {
        quantity: 'Hangs of other robots that hold, of those tried, counted from the stands',
        expected: crossing ? `Fewer than ${percent(crossing.value)}` : 'Written down, whatever it is',
        when: 'At the end of each day',
      },
    ],
    snapshot: {
      game: request.game,
      options: request.options,
      inputs: request.inputs ?? [],
      result,
      air: comparisonAir,
      tradeOff: comparison.name,
    },
  }
}

function summary(hook: OptionSummary, practice: OptionSummary, { breakEven, belief }: CompareReport): string {
  const crossing = breakEven?.crossings[0]
  const parts = [
    `Without the hook ${points(practice.mean)} points a match are expected, with it ${points(hook.mean)}: a lead of ${points(practice.mean - hook.mean)}, far less than one match varies by (standard deviation ${points(practice.sd)}).`,
  ]
  if (crossing) parts.push(`The order turns where '${hinge}' passes ${percent(crossing.value)}.`)
  if (belief) {
    parts.push(
      `Over all that we do not know, leaving it out is the better choice with a chance of ${percent(belief.best[practice.id] ?? 0)}; knowing everything beforehand would be worth ${points(belief.evpi.value)} points a match.`,
    )
  }
  return parts.join(' ')
}
