import { lanesOf, VersionPlayers } from '../../model/briefing/index.ts'
import { beliefDraws, beliefSummary, compare as compareOptions } from '../../model/compare/index.ts'
import { isOutOfMemory, ModelError, type ModelErrorCode, type Path } from '../../model/errors.ts'
import { travel as findWay } from '../../model/field/index.ts'
import { legReport } from '../../model/leg/index.ts'
import { filmOf } from '../../model/match/film.ts'
import { candidatesFor, LineupPlayers } from '../../model/match/lineup/index.ts'
import { BlockPlayer } from '../../model/match/run.ts'
import { Calibrators, seasonReport } from '../../model/match/scores/index.ts'
import { StatedPlayer } from '../../model/match/stated/index.ts'
import { comingDecision } from '../../model/picks/looks/index.ts'
import { PreparedPicks } from '../../model/picks/prepared.ts'
import { Playing, ratingsOf } from '../../model/picks/scores/index.ts'
import { seedsOf, spreadsOf } from '../../model/picks/seeds/index.ts'
import { plan as planMatch } from '../../model/plan/index.ts'
import { PlanParts } from '../../model/plan/shares.ts'
import type { AnySaid } from '../../model/said.ts'
import { doubtsOf } from '../../model/scouting/doubts/index.ts'
import {
  changedBy,
  earlierChanges as changesByEarlier,
  estimatesOfEvent,
  eventEstimates,
  halfLivesOf,
  madeOfEvent,
  estimatesOfTeams as ofTeams,
  sideBySideOf,
} from '../../model/scouting/estimates/index.ts'
import { estimateReport as reportOf } from '../../model/scouting/estimates/report.ts'
import { fieldReport } from '../../model/scouting/field/index.ts'
import { observedRobot } from '../../model/scouting/observed/index.ts'
import { solvedByCategory } from '../../model/scouting/solved/index.ts'
import { airPlan as planAir, sweepMatch, timing as timeHardware } from '../../model/timing/index.ts'
import type { TaskName, Tasks } from './tasks.ts'

/** What a thread hands back: an error of the model would lose its code on the way between threads. */
export type Outcome<Answer> =
  | { answer: Answer }
  | { error: { code: ModelErrorCode; message: string; path: Path | undefined; said?: AnySaid | undefined } }

function task<Name extends TaskName>(compute: (request: Tasks[Name]['request']) => Tasks[Name]['answer']) {
  return (request: Tasks[Name]['request']): Outcome<Tasks[Name]['answer']> => {
    try {
      return { answer: compute(request) }
    } catch (error) {
      if (isOutOfMemory(error)) return { error: { code: 'overBudget', message: tooLarge, path: undefined } }
      if (!(error instanceof ModelError)) throw error
      const { code, message, path, said } = error
      return { error: { code, message, path, said } }
    }
  }
}

const tooLarge =
  'This computation needs tables that are too large: try fewer spots, loads or capacities, or shorter times'

export const travel = task<'travel'>(({ game, robot, from, to }) => findWay(game, robot, from, to))
export const leg = task<'leg'>(({ game, robot, leg }) => legReport(game, robot, leg))
export const plan = task<'plan'>(({ game, option, ...options }) => planMatch(game, option, options))
const planParts = new PlanParts()
export const planPart = task<'planPart'>(({ planned, with: wanted }) => planParts.report(planned, wanted))
export const worth = task<'worth'>(({ planned, share }) => planParts.worth(planned, share))
export const compare = task<'compare'>((request) => compareOptions(request))
export const timing = task<'timing'>(({ calculator, input }) => timeHardware(calculator, input))
export const airPlan = task<'airPlan'>(({ game, option }) => planAir(game, option))
export const sweep = task<'sweep'>((request) => sweepMatch(request))
const blocks = new BlockPlayer()
export const matches = task<'matches'>(({ request, from, to }) => blocks.play(request, from, to))
const statedPlayer = new StatedPlayer()
export const stated = task<'stated'>(({ request, from, to }) => statedPlayer.play(request, from, to))
export const candidates = task<'candidates'>(({ request }) => candidatesFor(request))
const players = new LineupPlayers()
export const lineups = task<'lineups'>(({ request, lineups, from, to }) => {
  const player = players.for(request)
  return lineups.map((each) => player.played(each, from, to))
})
export const estimates = task<'estimates'>((input) => estimatesOfEvent(input))
export const estimatesOfTeams = task<'estimatesOfTeams'>(({ input, teams }) => ofTeams(input, teams))
export const halfLives = task<'halfLives'>((input) => halfLivesOf(input))
export const changed = task<'changed'>(({ input, records }) => changedBy(input, records))
export const made = task<'made'>((input) => madeOfEvent(input))
export const earlierChanges = task<'earlierChanges'>(({ input, earlier }) => changesByEarlier(input, earlier))
export const sideBySide = task<'sideBySide'>(({ input, teams }) => sideBySideOf(input, teams))
export const estimateReport = task<'estimateReport'>((request) => reportOf(request))
export const doubts = task<'doubts'>((request) => doubtsOf(request).doubts)
export const solved = task<'solved'>(({ matches, results, teams }) =>
  Object.fromEntries(
    [...solvedByCategory(matches, results, teams)].map(([category, of]) => [category, Object.fromEntries(of.teams)]),
  ),
)
export const observed = task<'observed'>(({ input, teams, draws }) => {
  const event = eventEstimates(input)
  return teams.map((team) => observedRobot(event, team, { draws }).option)
})
const briefed = new VersionPlayers()
export const versions = task<'versions'>(({ request, versions: asked, ...of }) => {
  const player = briefed.for(request)
  return asked.map((version) => player.play(version, of))
})
export const lanes = task<'lanes'>((request) => lanesOf(request))
export const seedLots = task<'seedLots'>(({ mark, field, requests }) => {
  if (met?.mark !== mark) met = { mark, playing: new Playing(field) }
  const { playing } = met
  playing.meet(field.teams)
  return requests.map((request) => playing.play(request))
})
export const seeds = task<'seeds'>(({ request, teams, lots }) => seedsOf(request, spreadsOf(request.game, teams, lots)))
/** The robots that were played last, so that parts of one question work them out once. */
let met: { mark: string; playing: Playing } | undefined
export const decision = task<'decision'>(comingDecision)
/** The event that was asked about last. */
let prepared: PreparedPicks | undefined
export const pickOrder = task<'pickOrder'>(({ of, ask }) => {
  if (prepared?.key !== of.key) prepared = new PreparedPicks(of)
  const { worked, waiting } = prepared.order(ask)
  return { order: worked.order, waiting }
})
export const ratings = task<'ratings'>(({ input, teams }) => ratingsOf(eventEstimates(input), teams))
export const field = task<'field'>((request) => fieldReport(request))
export const film = task<'film'>(({ game, ...of }) => filmOf(game, of))
const calibrators = new Calibrators()
export const calibrations = task<'calibrations'>(({ request, from, to }) => {
  const calibrator = calibrators.for(request)
  return Array.from({ length: to - from }, (_, k) => calibrator.calibrate(from + k))
})
export const season = task<'season'>(({ request, calibrations }) => seasonReport(request, calibrations))
export const draws = task<'draws'>(({ request, ...part }) => beliefDraws(request, part))
export const summary = task<'summary'>(({ request, parts }) => beliefSummary(request, parts))
