import type { LaneRequest, PlayedVersion, Version } from '../../model/briefing/index.ts'
import type { BeliefPart } from '../../model/compare/index.ts'
import type { BeliefReport, CompareReport, CompareRequest } from '../../model/compare/types.ts'
import type { Game, Option, Point, Robot } from '../../model/documents/types.ts'
import type { Route } from '../../model/field/types.ts'
import type { LegReport, LegRequest } from '../../model/leg/types.ts'
import type { Film } from '../../model/match/film.ts'
import type { Lineup, LineupRequest, PlayedLineup } from '../../model/match/lineup/index.ts'
import type { Calibration, SeasonReport, SeasonRequest } from '../../model/match/scores/types.ts'
import type { StatedRequest, StatedSums } from '../../model/match/stated/index.ts'
import type { Sums } from '../../model/match/tally.ts'
import type { MatchRequest } from '../../model/match/types.ts'
import type { ComingDecision, DecisionRequest } from '../../model/picks/looks/index.ts'
import type { PickOrder } from '../../model/picks/order/types.ts'
import type { PicksAsk, PicksEvent } from '../../model/picks/prepared.ts'
import type { Lot, PlayedField, PlayRequest } from '../../model/picks/scores/index.ts'
import type { Played, RatedNumbers, Rating } from '../../model/picks/scores/types.ts'
import type { SeedsReport, SeedsRequest } from '../../model/picks/seeds/types.ts'
import type { Waiting } from '../../model/picks/waiting/index.ts'
import type { Planned, TripWorth, WorthShare } from '../../model/plan/shares.ts'
import type { PlanOptions, PlanReport } from '../../model/plan/types.ts'
import type { Doubt, DoubtsRequest } from '../../model/scouting/doubts/index.ts'
import type {
  Changed,
  EarlierChange,
  EarlierEvent,
  EventInput,
  HalfLifeEvidence,
  MadeOfTeam,
  SideBySide,
  TeamEstimate,
} from '../../model/scouting/estimates/index.ts'
import type { EstimateReport, EstimateRequest } from '../../model/scouting/estimates/report.ts'
import type { FieldReport, FieldRequest } from '../../model/scouting/field/index.ts'
import type { Category, SolvedTeam } from '../../model/scouting/solved/index.ts'
import type { Match, Result } from '../../model/scouting/types.ts'
import type {
  AirPlan,
  Answers,
  CalculatorName,
  Inputs,
  Sweep,
  SweepAnswer,
  SweptMatch,
} from '../../model/timing/index.ts'

/** What a thread can be asked to compute: request and answer of each. */
export interface Tasks {
  travel: { request: { game: Game; robot: Robot; from: string; to: string }; answer: Route }
  leg: { request: { game: Game; robot: Robot; leg: LegRequest }; answer: LegReport }
  plan: { request: { game: Game; option: Option } & PlanOptions; answer: PlanReport }
  /** A plan without worth, and worth of some of its trips. */
  planPart: { request: { planned: Planned; with: PlanOptions['with'] }; answer: PlanReport }
  worth: { request: { planned: Planned; share: WorthShare }; answer: TripWorth[] }
  compare: { request: CompareRequest; answer: CompareReport }
  timing: { request: TimingRequest; answer: Answers[CalculatorName] }
  airPlan: { request: { game: Game; option: Option }; answer: AirPlan }
  sweep: { request: Sweep & { match?: SweptMatch }; answer: SweepAnswer }
  /** Some of a belief's draws, and what all of them say. */
  draws: { request: { request: CompareRequest; from: number; to: number; step: 0.25 | 0.1 }; answer: BeliefPart }
  /** Some of a match's blocks. */
  matches: { request: { request: MatchRequest; from: number; to: number }; answer: Sums[] }
  /** Some blocks of options that play with a stated field. */
  stated: { request: { request: StatedRequest; from: number; to: number }; answer: StatedSums[] }
  /** The line-ups worth playing, and what matches of some of them were worth. */
  candidates: { request: { request: LineupRequest }; answer: Lineup[] }
  lineups: {
    request: { request: LineupRequest; lineups: readonly Lineup[]; from: number; to: number }
    answer: PlayedLineup[]
  }
  /** Simulated matches of some of a season's matches, and what the season comes to. */
  calibrations: { request: { request: SeasonRequest; from: number; to: number }; answer: Calibration[] }
  season: { request: { request: SeasonRequest; calibrations: readonly Calibration[] }; answer: SeasonReport }
  film: { request: { game: Game; options: readonly Option[]; seed: number }; answer: Film }
  /** What is believed of all teams of an event. */
  estimates: { request: EventInput; answer: TeamEstimate[] }
  estimatesOfTeams: { request: { input: EventInput; teams: readonly string[] }; answer: TeamEstimate[] }
  halfLives: { request: EventInput; answer: HalfLifeEvidence[] }
  /** What some records changed. */
  changed: { request: { input: EventInput; records: readonly string[] }; answer: Changed[] }
  /** What each team’s numbers are made of. */
  made: { request: EventInput; answer: { [team: string]: MadeOfTeam } }
  /** Some teams beside each other, on common draws. */
  /** What an earlier event changes about them. */
  earlierChanges: { request: { input: EventInput; earlier: EarlierEvent }; answer: EarlierChange[] }
  sideBySide: { request: { input: EventInput; teams: readonly string[] }; answer: SideBySide }
  /** The same of records that are stored nowhere, with doubts. */
  estimateReport: { request: EstimateRequest; answer: EstimateReport }
  doubts: { request: DoubtsRequest; answer: Doubt[] }
  /** What teams bring by category, solved from what alliances came to. */
  solved: {
    request: { matches: readonly Match[]; results: readonly Result[]; teams: readonly string[] }
    answer: { [category in Category]?: { [team: string]: SolvedTeam } }
  }
  /** A design against timelines of one robot. */
  field: { request: FieldRequest; answer: FieldReport }
  /** Teams as robots of a match, by what was seen of them. */
  observed: { request: { input: EventInput; teams: readonly string[]; draws: number }; answer: Option[] }
  /** Matches of versions of one match, and ways over the field, for its briefing. */
  versions: {
    /** `request`: the JSON text of a `BriefingRequest`. */
    request: { request: string; versions: readonly Version[]; from: number; to: number; sums?: boolean }
    answer: PlayedVersion[]
  }
  lanes: { request: LaneRequest; answer: Point[][] }
  /** What is expected of each team alone, by common draw. */
  /** Simulated matches of some pairings; teams that the thread has met under the same mark keep what it worked out for them. */
  seedLots: { request: { mark: string; field: PlayedField; requests: readonly PlayRequest[] }; answer: Played[] }
  /** Final ranks from simulated matches of all that are to come. */
  seeds: {
    request: { request: SeedsRequest & { game: Game }; teams: readonly RatedNumbers[]; lots: readonly Lot[] }
    answer: SeedsReport
  }
  /** Whom the coming decision is among, and how far they are known. */
  decision: { request: DecisionRequest; answer: ComingDecision }
  /** Whom to invite first, and who will still be there. */
  pickOrder: { request: { of: PicksEvent; ask: PicksAsk }; answer: { order: PickOrder; waiting: Waiting[] } }
  ratings: { request: { input: EventInput; teams: readonly string[] }; answer: Rating[] }
  summary: { request: { request: CompareRequest; parts: BeliefPart[] }; answer: BeliefReport }
}

/** One calculator with what it is given. */
export type TimingRequest = { [Name in CalculatorName]: { calculator: Name; input: Inputs[Name] } }[CalculatorName]

export type TaskName = keyof Tasks

/** How long each may take at most (s). */
export const budgets: { readonly [name in TaskName]: number } = {
  travel: 10,
  leg: 20,
  plan: 60,
  planPart: 60,
  worth: 60,
  compare: 180,
  timing: 10,
  airPlan: 90,
  sweep: 90,
  draws: 180,
  matches: 60,
  stated: 120,
  candidates: 60,
  lineups: 120,
  calibrations: 120,
  season: 60,
  film: 60,
  estimates: 30,
  estimatesOfTeams: 30,
  changed: 30,
  halfLives: 30,
  made: 30,
  earlierChanges: 60,
  sideBySide: 30,
  observed: 30,
  versions: 60,
  lanes: 20,
  doubts: 30,
  solved: 30,
  estimateReport: 60,
  field: 30,
  seedLots: 60,
  seeds: 60,
  decision: 60,
  pickOrder: 60,
  ratings: 30,
  summary: 60,
}
