import { type BeliefPart, type BeliefQuestion, drawPart, joinParts, pilotValues, type Step } from './beliefDraws.ts'
import { needsFineGrid, summaryOf } from './beliefSummary.ts'
import { checkRequest } from './checkRequest.ts'
import { sideBySide } from './compare.ts'
import { likelyValues } from './evaluator.ts'
import { beliefSize } from './hypercubes.ts'
import { PlanEvaluator } from './planEvaluator.ts'
import { type Ask, headline, ids } from './question.ts'
import type { BeliefReport, CompareReport, CompareRequest } from './types.ts'
import { counter, type Watch } from './watch.ts'

type AskBelief = Ask & { belief?: { seed: number } }

/**
 * Options side by side, and on request what belief about all inputs says: see `sideBySide`. Apart from it, because belief
 * needs linear algebra, which the first page does not load.
 */
export const compare = (request: CompareRequest, watch?: Watch): CompareReport =>
  request.belief
    ? sideBySide(request, watch, { of: beliefOf, steps: beliefSteps(request) })
    : sideBySide(request, watch)

const pilotSteps = (inputs: readonly unknown[] = []) => 1 + 2 * inputs.length + beliefSize / 80
const beliefSteps = ({ inputs }: Ask) => pilotSteps(inputs) + beliefSize * (1 + 1 / 40)

function beliefQuestionOf(request: AskBelief, evaluator: PlanEvaluator): BeliefQuestion {
  return {
    options: ids(request),
    inputs: request.inputs ?? [],
    seed: request.belief?.seed ?? 1,
    evaluate: (values, step) => evaluator.values(values, { step, form: false }),
  }
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
