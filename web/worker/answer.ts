import { applyInput } from '../../src/model/compare/apply.ts'
import { type MapMaker, mapMaker, sideBySide, turn } from '../../src/model/compare/compare.ts'
import { differenceOf } from '../../src/model/compare/difference.ts'
import { pieceWorth } from '../../src/model/compare/pieceWorth.ts'
import type { CompareRequest, Input } from '../../src/model/compare/types.ts'
import type { Game, Option, Robot } from '../../src/model/documents/types.ts'
import { reachProblems, travel } from '../../src/model/field/index.ts'
import { legReport } from '../../src/model/leg/index.ts'
import type { LegReport, LegRequest } from '../../src/model/leg/types.ts'
import { Planner } from '../../src/model/plan/index.ts'
import type { PointsAt } from '../../src/model/timing/search/points.ts'
import type { Curve, Questions, ToWorker } from './protocol.ts'
import { sheetAnswer } from './sheet.ts'

type Progress = (done: number, total: number) => void

const kept = new Map<string, Planner>()

/** Planners keep routes, durations and legs, so that an edit costs little; the last two are kept. */
function plannerFor(game: Game, step: 0.1 | 0.25 = 0.1): Planner {
  const key = `${step}${JSON.stringify(game)}`
  const found = kept.get(key)
  if (found) return found
  const planner = new Planner(game, step)
  if (kept.size >= 2) kept.delete(kept.keys().next().value!)
  kept.set(key, planner)
  return planner
}

const keptLegs = new Map<string, LegReport>()

/** Legs that the edit did not touch are not computed again; the last 60 are kept. */
function keptLeg(game: Game, robot: Robot, leg: LegRequest): LegReport {
  const trip =
    leg.kind === 'collect'
      ? robot.collect[leg.source]
      : leg.kind === 'score'
        ? robot.score[leg.goal]
        : robot.finish[leg.finish]
  const key = JSON.stringify([leg, trip, robot.drive, robot.footprint, game])
  const report = keptLegs.get(key) ?? legReport(game, robot, leg)
  keptLegs.delete(key)
  keptLegs.set(key, report)
  if (keptLegs.size > 60) keptLegs.delete(keptLegs.keys().next().value!)
  return report
}

let map: { of: string; make: MapMaker } | null = null

/** A map is asked for in parts, one after the other. */
function mapFor(request: CompareRequest): MapMaker {
  const of = JSON.stringify(request)
  if (map?.of !== of) map = { of, make: mapMaker(request) }
  return map.make
}

/** Files are named here, not the folder's table of contents, so that what only rarer questions need is not loaded at once. */
const belief = () => import('../../src/model/compare/belief.ts')

const parts = {
  picks: () => import('./picks.ts'),
  kept: () => import('./picksKept.ts'),
  briefing: () => import('../../src/model/briefing/alone.ts'),
}

/**
 * Answers one question by the model. Pure but for the planners that it keeps. Of what only rarer questions need the answer is
 * a promise: it is loaded then, not with the first page.
 */
export function answer(question: ToWorker, progress: Progress): unknown {
  switch (question.kind) {
    case 'estimate':
      return plannerFor(question.game, 0.25).value(question.option, { form: false })
    case 'quick':
      return plannerFor(question.game).quick(question.option)
    case 'legs':
      return question.legs.map((leg) => keptLeg(question.game, question.robot, leg))
    case 'report':
      return plannerFor(question.game).report(question.option, { with: question.with })
    case 'compare':
      return question.request.belief
        ? belief().then(({ compare }) => compare(question.request, { progress }))
        : sideBySide(question.request, { progress })
    case 'beliefPart':
      return belief().then(({ beliefDraws }) => beliefDraws(question.request, question.part, { progress }))
    case 'beliefSummary':
      return belief().then(({ beliefNeedsFineGrid, beliefSummary }) =>
        question.parts[0]?.step === 0.25 && beliefNeedsFineGrid(question.parts)
          ? null
          : beliefSummary(question.request, question.parts),
      )
    case 'curve':
      return curve(question, progress)
    case 'turn':
      return turn({ ...question.request, turn: question.input }, { progress })
    case 'mapPart':
      return mapFor(question.request)(question, { progress })
    case 'difference':
      return differenceOf(question.own, question.other)
    case 'pieceWorth':
      return pieceWorth(question.game, question.option, {
        spot: question.spot,
        planner: plannerFor(question.game),
      })
    case 'airPlan':
      return import('../../src/model/timing/air/airPlan.ts').then(({ airPlan }) =>
        airPlan(question.game, question.option, plannerFor(question.game)),
      )
    case 'goals':
      return plannerFor(question.game).expected(question.option).goals
    case 'likely':
      return likely(question)
    case 'sheet':
      return sheetAnswer(question)
    case 'sweep':
      return import('../../src/model/timing/search/sweep.ts').then(({ sweep }) => sweep(question.request))
    case 'gearings':
      return gearings(question, progress)
    case 'match':
      return import('./match.ts').then(({ playOn }) => playOn(question, progress))
    case 'stated':
      return import('./stated.ts').then(({ playStated }) => playStated(question, progress))
    case 'picksKept':
      return Promise.all([parts.picks(), parts.kept().then(({ picksKept }) => picksKept(question.event))]).then(
        ([{ makeReady }, of]) => of !== null && makeReady(of),
      )
    case 'picksRough':
      return parts.picks().then(({ picksRough }) => picksRough(question))
    case 'picksOrder':
      return parts.picks().then(({ picksOrder }) => picksOrder(question))
    case 'picksRound':
      return parts.picks().then(({ picksRound }) => picksRound(question))
    case 'picksOffer':
      return parts.picks().then(({ picksOffer }) => picksOffer(question))
    case 'playoffs':
      return parts.picks().then(({ playoffs }) => playoffs(question))
    case 'substitutions':
      return parts.picks().then(({ substitutions }) => substitutions(question))
    case 'lineupCandidates':
      return import('./lineup.ts').then(({ candidates }) => candidates(question))
    case 'lineupMatches':
      return import('./lineup.ts').then(({ lineupMatches }) => lineupMatches(question))
    case 'sampleMatches':
      return import('./match.ts').then(({ sampled }) => sampled(question))
    case 'briefing':
      return parts.briefing().then(({ briefAlone }) => briefAlone(question.request, progress, question.byHand))
    case 'ownLineUp':
      return import('../../src/model/briefing/ownLineUp.ts').then(({ ownBeside }) =>
        ownBeside(question.request, question),
      )
    case 'ready':
      return Promise.all(question.parts.map((part) => parts[part]())).then(() => true)
    case 'reach':
      return reachProblems(question.game, question.footprint)
    case 'travel':
      return travel(question.game, question.robot, question.from, question.to)
  }
}

async function gearings(asked: Questions['gearings']['ask'], progress: Progress): Promise<PointsAt[]> {
  const { pointsAt } = await import('../../src/model/timing/search/points.ts')
  const planner = plannerFor(asked.game, 0.25)
  return asked.at.map((gearing, index) => {
    const found = pointsAt(planner, asked, gearing)
    progress(index + 1, asked.at.length)
    return found
  })
}

interface Documents {
  game: Game
  options: Option[]
}

const atLikely = (documents: Documents, inputs: readonly Input[]): Documents =>
  inputs.reduce((changed, input) => applyInput(changed, input, input.likely), documents)

function curve(asked: Documents & { input: Input; others: Input[]; count: number }, progress: Progress): Curve[] {
  const { low, high } = asked.input
  const base = atLikely({ game: asked.game, options: asked.options }, asked.others)
  const values = Array.from({ length: asked.count }, (_, index) => low + ((high - low) * index) / (asked.count - 1))
  const curves: Curve[] = asked.options.map((option) => ({ option: option.id, at: [] }))
  for (const [step, value] of values.entries()) {
    const changed = applyInput(base, asked.input, value)
    // The coarse grid moves a line by hundredths of a point, which a picture does not show.
    const planner = plannerFor(changed.game, 0.25)
    for (const [index, option] of changed.options.entries()) curves[index]!.at.push([value, planner.value(option)])
    progress(step + 1, values.length)
  }
  return curves
}

function likely(asked: Documents & { inputs: Input[] }): number[] {
  const { game, options } = atLikely({ game: asked.game, options: asked.options }, asked.inputs)
  return options.map((option) => plannerFor(game).value(option))
}
