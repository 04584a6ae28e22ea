import { beats } from './beats.ts'
import { checkRequest } from './checkRequest.ts'
import { crossingsOf } from './crossings.ts'
import { type MapAxes, type MapPoint, mapPoints } from './map.ts'
import { PlanEvaluator } from './planEvaluator.ts'
import { type Ask, questionOf } from './question.ts'
import { swingOf } from './swing.ts'
import { type Turn, turnOf } from './turn.ts'
import type { BeliefReport, CompareReport, CompareRequest } from './types.ts'
import { counter, type Watch } from './watch.ts'

/** What belief adds to a comparison, and the steps of progress that it takes. */
export interface BeliefMaker {
  of(request: CompareRequest, evaluator: PlanEvaluator, tick: () => void): BeliefReport
  steps: number
}

/**
 * Options side by side: each one's distribution in short and the chance that it beats each other one, all as the
 * documents say; with inputs also how far each swings the answer; on request the break-even of one input. What belief says
 * is given in by who loads it: `compare` of belief.ts. Throws ModelError 'invalid' with the path of the field, and Cancelled when stopped.
 */
export function sideBySide(request: CompareRequest, watch?: Watch, belief?: BeliefMaker): CompareReport {
  checkRequest(request)
  const inputs = request.inputs ?? []
  const evaluator = new PlanEvaluator(request)
  const tick = counter(watch, stepsOf(request) + (belief?.steps ?? 0))
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
  if (belief) report.belief = belief.of(request, evaluator, tick)
  return report
}

/** Steps that the progress counts; a break-even's roots are not known before. */
function stepsOf(request: CompareRequest): number {
  const { options, inputs = [], breakEven: input } = request
  const swings = inputs.length > 0 ? 1 + 2 * inputs.length : 0
  return options.length + (input === undefined ? 0 : 45) + swings
}

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
