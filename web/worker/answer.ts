import { applyInput, beliefDraws, beliefNeedsFineGrid, beliefSummary, compare } from '../../src/model/compare/index.ts'
import type { Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { travel } from '../../src/model/field/index.ts'
import { legReport } from '../../src/model/leg/index.ts'
import { Planner } from '../../src/model/plan/index.ts'
import type { Curve, ToWorker } from './protocol.ts'

type Progress = (done: number, total: number) => void

const kept = new Map<string, Planner>()

/** Planners keep routes, durations and legs, so that an edit costs little; the last two games are kept. */
function plannerFor(game: Game): Planner {
  const key = JSON.stringify(game)
  const found = kept.get(key)
  if (found) return found
  const planner = new Planner(game)
  if (kept.size >= 2) kept.delete(kept.keys().next().value!)
  kept.set(key, planner)
  return planner
}

/** Answers one question by the model. Pure but for the planners that it keeps. */
export function answer(question: ToWorker, progress: Progress): unknown {
  switch (question.kind) {
    case 'quick':
      return plannerFor(question.game).quick(question.option)
    case 'legs':
      return question.legs.map((leg) => legReport(question.game, question.robot, leg))
    case 'report':
      return plannerFor(question.game).report(question.option, { with: question.with })
    case 'compare':
      return compare(question.request, { progress })
    case 'beliefPart':
      return beliefDraws(question.request, question.part, { progress })
    case 'beliefSummary':
      return question.parts[0]?.step === 0.25 && beliefNeedsFineGrid(question.parts)
        ? null
        : beliefSummary(question.request, question.parts)
    case 'curve':
      return curve(question, progress)
    case 'travel':
      return travel(question.game, question.robot, question.from, question.to)
  }
}

function curve(asked: { game: Game; options: Option[]; input: Input; count: number }, progress: Progress): Curve[] {
  const { low, high } = asked.input
  const values = Array.from({ length: asked.count }, (_, index) => low + ((high - low) * index) / (asked.count - 1))
  const curves: Curve[] = asked.options.map((option) => ({ option: option.id, at: [] }))
  for (const [step, value] of values.entries()) {
    const changed = applyInput({ game: asked.game, options: asked.options }, asked.input, value)
    const planner = plannerFor(changed.game)
    for (const [index, option] of changed.options.entries()) curves[index]!.at.push([value, planner.value(option)])
    progress(step + 1, values.length)
  }
  return curves
}
