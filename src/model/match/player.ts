import type { Game, Load, Option, Robot } from '../documents/types.ts'
import { LegBuilder } from '../leg/builder.ts'
import type { GraphLeg, TravelTime } from '../plan/graph.ts'
import { finePerStep } from '../plan/timed.ts'
import { TravelTimes } from '../plan/travelTimes.ts'
import type { PlanNode } from '../plan/types.ts'
import type { Ground } from './ground.ts'
import { Program, Tables } from './program.ts'
import type { Quantiles } from './quantiles.ts'

export const collecting = 0
export const scoring = 1
export const finishing = 2

/** Where a robot stands between two legs, and what it holds. */
export class Stand {
  readonly at: string
  readonly piece: string | null
  readonly load: number
  /** Number among the player's stands, and among the nodes of its plan; −1 where no plan leads. */
  readonly index: number
  readonly planned: number
  legs: readonly PlayedLeg[] = []

  constructor(
    index: number,
    planned: number,
    { at, load }: { at: string; load: { piece: string; count: number } | null },
  ) {
    this.index = index
    this.planned = planned
    this.at = at
    this.piece = load?.piece ?? null
    this.load = load?.count ?? 0
  }
}

/** A leg made ready for many draws. */
export class PlayedLeg {
  readonly kind: number
  readonly place: number
  readonly from: Stand
  /** Id of the spot where it leads. */
  readonly spot: string
  readonly piece: string | null
  /** Pieces to collect or to score. */
  readonly load: number
  /** Time of the drive from rest to rest, without pace (s). */
  readonly drive: number
  readonly program: Program
  readonly success: number
  /** A collect leg's time of one retry. */
  readonly retry: Quantiles | null
  /** Place of the finish that a failed one still earns; −1 for none. */
  readonly otherwise: number
  /** Random words that one such leg may use, retries apart. */
  readonly words: number
  /** Where the robot stands with k pieces in hand after it, made when first asked for. */
  readonly after: (Stand | undefined)[] = []

  constructor(own: Omit<PlayedLeg, 'after' | 'words'>) {
    this.kind = own.kind
    this.place = own.place
    this.from = own.from
    this.spot = own.spot
    this.piece = own.piece
    this.load = own.load
    this.drive = own.drive
    this.program = own.program
    this.success = own.success
    this.retry = own.retry
    this.otherwise = own.otherwise
    this.words = own.program.words + (own.kind === scoring ? own.load : 1)
  }
}

/** What players of one game share: the same trips take the same times. */
export interface Kept {
  readonly tables: Tables
  readonly builder: LegBuilder
  /** By footprint and drive: a TravelTimes forgets one robot's ways when it is asked for another's. */
  readonly travel: Map<string, TravelTime>
}

export const keptFor = (game: Game): Kept => ({
  tables: new Tables(),
  builder: new LegBuilder(0.1 / finePerStep, finePerStep, 2 * game.clock.teleop),
  travel: new Map(),
})

/** A leg as a player begins it: of its plan's graph, or of its habit. */
export type LegToPlay = Pick<GraphLeg, 'action' | 'spec' | 'key' | 'load' | 'success'>

/** One option made ready to be played in many matches: by its plan (`planned.ts`) or as it was observed (`observed.ts`). */
export abstract class Player {
  readonly option: Option
  readonly game: Game
  readonly ground: Ground
  readonly tables: Tables
  readonly pace: Quantiles
  /** Null where the form is always 1. */
  readonly form: Quantiles | null
  readonly travel: TravelTime
  /** Where it stands at teleop's start. */
  abstract readonly initial: Stand
  /** The most pieces in hand; most random words of a leg; random words of the routine. */
  readonly mostPieces: number
  abstract readonly mostWords: number
  readonly autoWords: number
  /** Those known from the beginning, and those that matches have led to so far. */
  readonly stands: Stand[] = []
  private readonly byName = new Map<string, Stand>()
  private readonly programs = new Map<string, Program>()

  /** @throws ModelError as the plan of the option does */
  constructor(ground: Ground, option: Option, { tables, travel }: Kept) {
    const { game } = ground
    const { robot } = option
    this.ground = ground
    this.game = game
    this.option = option
    this.tables = tables
    this.pace = tables.of(robot.drive.pace)
    this.form = robot.form.spread > 1 ? tables.of({ kind: 'lognormal', median: 1, spread: robot.form.spread }) : null
    this.travel = travelOf(travel, game, robot)
    const routine = robot.autos.find(({ id }) => id === option.auto)
    this.autoWords = (routine?.steps ?? []).reduce((sum, { count }) => sum + count, 0)
    this.mostPieces = Math.max(robot.preload?.count ?? 0, routine?.holding?.count ?? 0, ...Object.values(robot.carries))
  }

  /** What it can begin where no stand is known yet. */
  protected abstract legsFrom(node: PlanNode): readonly LegToPlay[]

  /** Chance that a piece, a finish or a try to collect succeeds, as it is now. */
  successOf(leg: PlayedLeg): number {
    return leg.success
  }

  /** Where a robot stands that arrived on a leg and has `load` pieces in hand then. */
  after(leg: PlayedLeg, load: number): Stand {
    const known = leg.after[load]
    if (known) return known
    const stand = this.standAt(leg.spot, leg.piece === null || load === 0 ? null : { piece: leg.piece, count: load })
    leg.after[load] = stand
    return stand
  }

  protected standAt(at: string, load: Load | null): Stand {
    const found = this.byName.get(nameOf(at, load))
    if (found) return found
    const stand = this.add(at, load, -1)
    this.prepare(stand, this.legsFrom({ at, load }))
    return stand
  }

  protected add(at: string, load: Load | null, planned: number): Stand {
    const stand = new Stand(this.stands.length, planned, { at, load })
    this.stands.push(stand)
    this.byName.set(nameOf(at, load), stand)
    return stand
  }

  protected prepare(stand: Stand, legs: readonly LegToPlay[]): void {
    stand.legs = legs.map((leg) => this.played(stand, leg))
  }

  private played(from: Stand, leg: LegToPlay): PlayedLeg {
    const { action, spec } = leg
    const name = action.kind === 'collect' ? action.source : action.kind === 'score' ? action.goal : action.finish
    const { otherwise } = action.kind === 'finish' ? this.option.robot.finish[name]! : { otherwise: null }
    const source = this.game.sources.find(({ id }) => id === name)
    return new PlayedLeg({
      kind: action.kind === 'collect' ? collecting : action.kind === 'score' ? scoring : finishing,
      place: this.ground.placeOf.get(name) as number,
      from,
      spot: action.spot,
      piece: action.kind === 'collect' ? (source?.piece ?? null) : from.piece,
      load: leg.load,
      drive: spec.drive?.seconds ?? 0,
      program: this.program(leg),
      success: spec.tries?.success ?? leg.success,
      retry: spec.tries?.retry && spec.tries.success < 1 ? this.tables.of(spec.tries.retry) : null,
      otherwise: otherwise === null ? -1 : (this.ground.placeOf.get(otherwise) as number),
    })
  }

  private program({ key, load, spec }: LegToPlay): Program {
    const name = `${key}|${load}`
    const found = this.programs.get(name) ?? new Program(spec.trip, Math.max(1, load), this.tables)
    this.programs.set(name, found)
    return found
  }
}

function travelOf(known: Kept['travel'], game: Game, robot: Robot): TravelTime {
  const key = JSON.stringify([robot.footprint, robot.drive])
  const travel = known.get(key) ?? new TravelTimes().for(game, robot)
  known.set(key, travel)
  return travel
}

const nameOf = (at: string, load: Load | null) => (load ? `${at}|${load.piece}|${load.count}` : at)
