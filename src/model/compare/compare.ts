import { beats } from './beats.ts'
import { type BeliefPart, type BeliefQuestion, drawPart, joinParts, pilotValues, type Step } from './beliefDraws.ts'
import { needsFineGrid, summaryOf } from './beliefSummary.ts'
import { checkRequest } from './checkRequest.ts'
import { crossingsOf } from './crossings.ts'
import { likelyValues, type Question } from './evaluator.ts'
import { beliefSize } from './hypercubes.ts'
import { type MapAxes, type MapPoint, mapPoints } from './map.ts'
import { PlanEvaluator } from './planEvaluator.ts'
import { swingOf } from './swing.ts'
import { type Turn, turnOf } from './turn.ts'
import type { BeliefReport, CompareReport, CompareRequest } from './types.ts'
import { counter, type Watch } from './watch.ts'

type Ask = Pick<CompareRequest, 'game' | 'options' | 'inputs'>
type AskBelief = Ask & { belief?: { seed: number } }

/** Headlines, roots and swings are those of the model: a grid of 0.1 s, and form as the robots have it. */
const headline = { step: 0.1, form: true } as const

const ids = (request: Ask) => request.options.map(({ id }) => id)

/** The question of a request, each evaluation counted. */
function questionOf(request: Ask, evaluator: PlanEvaluator, tick: () => void): Question {
  return {
    options: ids(request),
    inputs: request.inputs ?? [],
    evaluate: (values) => {
      tick()
      return evaluator.values(values, headline)
    },
  }
}

function beliefQuestionOf(request: AskBelief, evaluator: PlanEvaluator): BeliefQuestion {
  return {
    options: ids(request),
    inputs: request.inputs ?? [],
    seed: request.belief?.seed ?? 1,
    evaluate: (values, step) => evaluator.values(values, { step, form: false }),
  }
}

/**
 * Options side by side: each one's distribution in short and the chance that it beats each other one, all as the
 * documents say; with inputs also how far each swings the answer; on request the break-even of one input, and what
 * belief about all of them says. Throws ModelError 'invalid' with the path of the field, and Cancelled when stopped.
 */
export function compare(request: CompareRequest, watch?: Watch): CompareReport {
  checkRequest(request)
  const inputs = request.inputs ?? []
  const evaluator = new PlanEvaluator(request)
  const tick = counter(watch, stepsOf(request))
  const question = questionOf(request, evaluator, tick)
  const reports = request.options.map((option, index) => {
    tick()
    return evaluator.planner(request.game, 0.1, index).report(option)
  })
  const report: CompareReport = {
    options: reports.map(({ expected, sd, p10, p50, p90 }, index) => ({
      id: question.options[index]!,
      mean: expected.total,
      sd,
      p10,
      p50,
      p90,
    })),
    beats: Object.fromEntries(
      question.options.map((id, own) => [
        id,
        Object.fromEntries(
          question.options.flatMap((otherId, other) =>
            other === own ? [] : [[otherId, beats(reports[own]!.distribution, reports[other]!.distribution)]],
          ),
        ),
      ]),
    ),
  }
  if (request.breakEven !== undefined) {
    report.breakEven = { input: request.breakEven, crossings: crossingsOf(question, request.breakEven) }
  }
  if (inputs.length > 0) report.swing = swingOf(question)
  if (request.belief) report.belief = beliefOf(request, evaluator, tick)
  return report
}

/** Steps that the progress counts; a break-even's roots are not known before. */
function stepsOf(request: CompareRequest): number {
  const { options, inputs = [], breakEven: input, belief: asked } = request
  const swings = inputs.length > 0 ? 1 + 2 * inputs.length : 0
  return options.length + (input === undefined ? 0 : 45) + swings + (asked ? beliefSteps(request) : 0)
}

const pilotSteps = (inputs: readonly unknown[] = []) => 1 + 2 * inputs.length + beliefSize / 80
const beliefSteps = ({ inputs }: Ask) => pilotSteps(inputs) + beliefSize * (1 + 1 / 40)

/** Break-even of one input: see `crossingsOf`. */
export function breakEven(request: Ask & { breakEven: string }, watch?: Watch): CompareReport['breakEven'] {
  checkRequest(request)
  const question = questionOf(request, new PlanEvaluator(request), counter(watch, 45))
  return { input: request.breakEven, crossings: crossingsOf(question, request.breakEven) }
}

/** A coarser grid of time, with form as the robots have it: moves points by some hundredths. */
const coarsely = { step: 0.25, form: true } as const

/** Whether and where one input alone changes the best option: see `turnOf`. */
export function turn(request: Ask & { turn: string }, watch?: Watch): Turn {
  checkRequest({ ...request, breakEven: request.turn })
  const evaluator = new PlanEvaluator(request)
  const tick = counter(watch, 17 + 45)
  return turnOf(questionOf(request, evaluator, tick), request.turn, (values) => {
    tick()
    return evaluator.values(values, coarsely)
  })
}

/** Computes places of a map over two inputs: see `mapPoints`. */
export type MapMaker = (part: { axes: MapAxes; at: readonly MapPoint[] }, watch?: Watch) => number[][]

/** What makes the map of a request, part by part: it keeps its plans, so that a second part costs less than the first. */
export function mapMaker(request: Ask): MapMaker {
  checkRequest(request)
  const evaluator = new PlanEvaluator(request)
  const evaluate = (values: readonly number[]) => evaluator.values(values, coarsely)
  return (part, watch) => mapPoints({ inputs: request.inputs ?? [], evaluate }, part, counter(watch, part.at.length))
}

/** Swing of every input: see `swingOf`. */
export function swing(request: Ask, watch?: Watch): CompareReport['swing'] {
  checkRequest(request)
  return swingOf(questionOf(request, new PlanEvaluator(request), counter(watch, 1 + 2 * (request.inputs?.length ?? 0))))
}

/** What belief about the inputs says, in one go: see `beliefDraws` for the same in parts. */
export function belief(request: AskBelief, watch?: Watch): BeliefReport {
  checkRequest(request)
  return beliefOf(request, new PlanEvaluator(request), counter(watch, beliefSteps(request)))
}

function beliefOf(request: AskBelief, evaluator: PlanEvaluator, tick: () => void): BeliefReport {
  const question = beliefQuestionOf(request, evaluator)
  evaluator.keepToUsed(pilotValues(question), tick)
  const drawn = (step: Step) => drawPart(question, { from: 0, to: beliefSize, step }, tick)
  const coarse = drawn(0.25)
  return summarised(request, needsFineGrid(coarse) ? drawn(0.1) : coarse, evaluator)
}

/**
 * The draws from ≤ k < to of a belief of 2,000: the part of one worker, a plain object that can be sent. Parts cut
 * anywhere give the same belief. `step: 0.1` repeats them on the fine grid, where `beliefNeedsFineGrid` says so.
 * @example beliefSummary(request, [beliefDraws(request, { from: 0, to: 1000 }), beliefDraws(request, { from: 1000, to: 2000 })])
 */
export function beliefDraws(
  request: AskBelief,
  part: { from: number; to: number; step?: Step },
  watch?: Watch,
): BeliefPart {
  checkRequest(request)
  const { from, to, step } = part
  const evaluator = new PlanEvaluator(request)
  const question = beliefQuestionOf(request, evaluator)
  const own = to - from
  const tick = counter(watch, step === 0.1 ? own : pilotSteps(request.inputs) + own * (1 + 1 / 40))
  if (step !== 0.1) evaluator.keepToUsed(pilotValues(question), tick)
  return drawPart(question, part, tick)
}

/** Whether all parts must be repeated with `step: 0.1`, because the coarse grid changes the differences too much. */
export const beliefNeedsFineGrid = (parts: readonly BeliefPart[]): boolean => needsFineGrid(joinParts(parts))

/** The belief of all parts together: see `summaryOf`. */
export function beliefSummary(request: AskBelief, parts: readonly BeliefPart[]): BeliefReport {
  return summarised(request, joinParts(parts), new PlanEvaluator(request))
}

function summarised(request: AskBelief, all: BeliefPart, evaluator: PlanEvaluator): BeliefReport {
  const inputs = request.inputs ?? []
  const likely = likelyValues(inputs)
  const withForm = evaluator.values(likely, headline)
  const without = evaluator.values(likely, { ...headline, form: false })
  return {
    ...summaryOf({ options: ids(request), inputs }, all),
    form: Object.fromEntries(request.options.map(({ id }, index) => [id, withForm[index]! - without[index]!])),
  }
}
