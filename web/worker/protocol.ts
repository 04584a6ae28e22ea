import type { ByHand, OwnBeside } from '../../src/model/briefing/ownLineUp.ts'
import type { Briefing, BriefingRequest } from '../../src/model/briefing/types.ts'
import type { BeliefPart, MapAxes, MapPoint, PieceWorth, Turn } from '../../src/model/compare/index.ts'
import type { BeliefReport, CompareReport, CompareRequest, Input } from '../../src/model/compare/types.ts'
import type { QuickWay, Strength } from '../../src/model/documents/quickSheet.ts'
import type { Game, Option, Point, Robot } from '../../src/model/documents/types.ts'
import type { Path, Problem } from '../../src/model/errors.ts'
import type { Route } from '../../src/model/field/types.ts'
import type { LegReport, LegRequest } from '../../src/model/leg/types.ts'
import type { PlayedLineup } from '../../src/model/match/lineup/player.ts'
import type { LineupRequest, Lineup as RolesTaken } from '../../src/model/match/lineup/types.ts'
import type { StatedReport, StatedRequest, StatedSums } from '../../src/model/match/stated/types.ts'
import type { Sums } from '../../src/model/match/tally.ts'
import type { MatchReport, SampleMatches } from '../../src/model/match/types.ts'
import type { PickOrder, RefineTask, WorkedOrder } from '../../src/model/picks/order/index.ts'
import type { BracketStanding, EventChance, Format, Offer, Substitution } from '../../src/model/picks/playoffs/index.ts'
import type { PicksAsk, PicksEvent } from '../../src/model/picks/prepared.ts'
import type { Waiting } from '../../src/model/picks/waiting/index.ts'
import type { PlanReport, QuickPlan } from '../../src/model/plan/types.ts'
import type { AnySaid } from '../../src/model/said.ts'
import type { WayResult } from '../../src/model/sheet/index.ts'
import type { AirPlan } from '../../src/model/timing/air/airPlan.ts'
import type { Gearing, PointsAt, Sweep, SweepResult } from '../../src/model/timing/index.ts'

export type { PicksAsk, PicksEvent } from '../../src/model/picks/prepared.ts'

/** One option's expected points at values of one input. */
export interface Curve {
  option: string
  at: [number, number][]
}

/** [points, probability], rising. */
export type Points = readonly (readonly [number, number])[]

/** Ways of a quick sheet under one or several sets of rules, at one or several strengths of play. */
export interface SheetAsk {
  games: Game[]
  ways: QuickWay[]
  strengths: Strength[]
}

export type WayAnswer = { result: WayResult } | { problem: Pick<Problem, 'message' | 'said'> }

/** Three options of ours and three of theirs, by position. */
export interface Lineup {
  ours: Option[]
  theirs: Option[]
}

/** A robot's way over the field in the alliance's own coordinates (m). */
export type Way = Point[]

export interface SampledMatches {
  samples: SampleMatches
  /** By robot, as in the timelines, and by 'from>to'. */
  ways: { [fromTo: string]: Way }[]
}

/** The playoffs of alliances as they are, robots by alliance. */
export interface PlayoffsAsk {
  of: PicksEvent
  format: Format
  alliances: readonly (readonly string[])[]
  /** Games won so far, by tie. */
  standing: BracketStanding
  runs: number
}

/** What can be asked of the model in a worker, and what it answers. */
export interface Questions {
  /** Expected points on a coarse grid at form 1: what an edit changes, to a few hundredths, in a fraction of the time. */
  estimate: { ask: { game: Game; option: Option }; answer: number }
  quick: { ask: { game: Game; option: Option }; answer: QuickPlan }
  legs: { ask: { game: Game; robot: Robot; legs: LegRequest[] }; answer: LegReport[] }
  report: { ask: { game: Game; option: Option; with: ('call' | 'worth')[] }; answer: PlanReport }
  beliefPart: {
    ask: { request: CompareRequest; part: { from: number; to: number; step?: 0.1 | 0.25 } }
    answer: BeliefPart
  }
  beliefSummary: {
    ask: { request: CompareRequest; parts: BeliefPart[] }
    /** Null where the draws must be repeated on the fine grid first. */
    answer: BeliefReport | null
  }
  compare: { ask: { request: CompareRequest }; answer: CompareReport }
  /** Against one input, the others at their likely values. */
  curve: { ask: { game: Game; options: Option[]; input: Input; others: Input[]; count: number }; answer: Curve[] }
  /** Whether and where one input alone changes the best option. */
  turn: { ask: { request: CompareRequest; input: string }; answer: Turn }
  /** Expected points of every option at places of a map over two inputs. */
  mapPart: { ask: { request: CompareRequest; axes: MapAxes; at: MapPoint[] }; answer: number[][] }
  /** Distribution of own − other points. */
  difference: { ask: { own: Points; other: Points }; answer: [number, number][] }
  pieceWorth: { ask: { game: Game; option: Option; spot: string }; answer: PieceWorth }
  /** A robot’s stored air through the plan of the option. */
  airPlan: { ask: { game: Game; option: Option }; answer: AirPlan }
  /** Pieces and points of an option by goal, in teleop, on average. */
  goals: { ask: { game: Game; option: Option }; answer: { [goal: string]: { pieces: number; points: number } } }
  /** Expected points of each option with all inputs at their likely values. */
  likely: { ask: { game: Game; options: Option[]; inputs: Input[] }; answer: number[] }
  /** By game, strength and way. */
  sheet: { ask: SheetAsk; answer: WayAnswer[][][] }
  /** Times of a mechanism over reductions and numbers of motors. */
  sweep: { ask: { request: Sweep }; answer: SweepResult }
  /** Expected points with a mechanism of the robot geared otherwise, on the coarse grid. */
  gearings: { ask: { game: Game; option: Option; mechanism: string; at: Gearing[] }; answer: PointsAt[] }
  travel: {
    ask: { game: Game; robot: Pick<Robot, 'footprint' | 'drive'>; from: string; to: string }
    answer: Route
  }
  /** Matches `from` … `to − 1` of a line-up, added to those before; `leads` are ours of these matches alone. */
  match: {
    ask: {
      game: Game
      level: string | null
      seed: number
      lineup: Lineup
      from: number
      to: number
      /** Standard error of win + ½ tie at which no more are played; null: all of them. */
      precision: number | null
      /** Handed back with the next question, so that any worker can go on, with the same sums. */
      soFar: Sums | null
    }
    answer: { soFar: Sums; leads: Float64Array; report: MatchReport }
  }
  /** Matches `from` … `to − 1` of options that play with a stated field, added to those before. */
  stated: {
    ask: Omit<StatedRequest, 'level' | 'replicates'> & {
      level: string | null
      from: number
      to: number
      soFar: StatedSums | null
    }
    answer: { soFar: StatedSums; report: StatedReport }
  }
  /** The line-ups worth playing, and what the matches `from` … `to − 1` of some of them are worth. */
  lineupCandidates: { ask: { request: LineupRequest }; answer: RolesTaken[] }
  lineupMatches: {
    ask: { request: LineupRequest; lineups: readonly RolesTaken[]; from: number; to: number }
    answer: PlayedLineup[]
  }
  /** Makes an event ready for what is asked of its selection, as this browser keeps it; false: it keeps none. */
  picksKept: { ask: { event: string }; answer: boolean }
  /** A first order from few matches and draws, without who will still be there. Null: no event of this key is ready. */
  picksRough: { ask: { of: PicksEvent | { key: string }; ask: PicksAsk }; answer: PickOrder | null }
  picksOrder: {
    ask: { of: PicksEvent | { key: string }; ask: PicksAsk }
    answer: { worked: WorkedOrder; waiting: Waiting[]; tasks: RefineTask[] } | null
  }
  /** Outcomes of a round of simulated matches, by task. */
  picksRound: { ask: { of: PicksEvent; tasks: readonly RefineTask[]; round: number }; answer: Uint8Array[] }
  picksOffer: { ask: { of: PicksEvent; ask: PicksAsk; format: Format; runs: number }; answer: Offer }
  playoffs: { ask: PlayoffsAsk; answer: EventChance[] }
  /** Which three of an alliance play best. */
  substitutions: { ask: PlayoffsAsk & { alliance: number }; answer: Substitution[] }
  /** A typical, a best and a worst match to look at. */
  sampleMatches: {
    ask: { game: Game; level: string | null; seed: number; lineup: Lineup }
    answer: SampledMatches
  }
  /** A match’s briefing, from a pack’s robots; with a line-up of one's own instead of the computed one. */
  briefing: { ask: { request: BriefingRequest; byHand?: ByHand }; answer: Briefing }
  /** Loads parts of the model before they are asked about. */
  ready: { ask: { parts: readonly ('picks' | 'briefing')[] }; answer: true }
  /** A line-up of one's own in the matches of a briefing. */
  ownLineUp: { ask: { request: BriefingRequest } & ByHand; answer: OwnBeside }
  /** Where a robot of this size can not stand or get. */
  reach: { ask: { game: Game; footprint: Robot['footprint'] }; answer: Problem[] }
}

export type Kind = keyof Questions

export type ToWorker = { [K in Kind]: { id: number; kind: K } & Questions[K]['ask'] }[Kind]

export interface Failure {
  code: 'invalid' | 'unreachable' | 'overBudget' | 'outOfMemory' | 'unexpected'
  message: string
  path?: Path | undefined
  said?: AnySaid | undefined
}

export type FromWorker =
  | { id: number; progress: { done: number; total: number } }
  | { id: number; answer: unknown }
  | { id: number; failure: Failure }
