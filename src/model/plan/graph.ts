import { refusal } from '../documents/sentences.ts'
import type { Game, Goal, Load, Option, Trip } from '../documents/types.ts'
import { keyOf, type LegSpec } from '../leg/builder.ts'
import { loadsFor } from './loads.ts'
import type { Action, PlanNode, WorthLeg } from './types.ts'

/** A leg that the robot can begin at a node. */
export interface GraphLeg {
  /** Index into the graph's legs. */
  readonly id: number
  readonly action: Exclude<Action, { kind: 'stop' }>
  /** Node after the leg; -1 for a finish. */
  readonly to: number
  readonly from: number
  readonly spec: LegSpec
  readonly key: string
  readonly worth: WorthLeg
  /** Pieces collected or scored; 0 for a finish. */
  readonly load: number
  /** Index into `goals` of a score leg, else -1. */
  readonly goal: number
  readonly success: number
  /** Points of a finish that works, and of one that fails. */
  readonly points: number
  readonly otherwise: number
}

export interface GraphNode extends PlanNode {
  readonly legs: GraphLeg[]
}

/** All nodes that the robot can reach in teleop and the legs between them, in the order of the documents. */
export interface PlanGraph {
  readonly nodes: readonly GraphNode[]
  readonly legs: readonly GraphLeg[]
  /** Node at teleop's start. */
  readonly initial: number
  readonly goals: readonly Goal[]
}

/** Pieces of the largest load that the robot brings to a goal (index into `goals`), 1 where it brings none. */
export const largestLoad = ({ legs }: Pick<PlanGraph, 'legs'>, goal: number): number =>
  Math.max(1, ...legs.filter((leg) => leg.goal === goal).map((leg) => leg.load))

/** Time of a route without pace (s), between ids of starts and spots. */
export type TravelTime = (from: string, to: string) => number

/** More nodes than this make a table that no screen waits for. */
const mostNodes = 400

/**
 * The plan's nodes and legs for an option.
 * @throws ModelError 'invalid' for unknown ids, 'unreachable' from the routes, 'overBudget' for too many nodes.
 */
export function graphOf(game: Game, option: Option, travel: TravelTime): PlanGraph {
  const builder = new GraphBuilder(game, option, travel)
  return builder.build()
}

/**
 * The legs that the robot can begin at a node that no leg leads to, where a match can put it: before a full goal, before an
 * empty source, or with fewer pieces than it came for. They lead to nodes of the graph.
 */
export function legsAt(
  game: Game,
  option: Option,
  travel: TravelTime,
  { graph, node }: { graph: PlanGraph; node: PlanNode },
): GraphLeg[] {
  return new GraphBuilder(game, option, travel).from(graph, node)
}

class GraphBuilder {
  private readonly nodes: GraphNode[] = []
  private readonly index = new Map<string, number>()
  private readonly legs: GraphLeg[] = []
  private readonly goals: Goal[]
  private readonly keys = new Map<Trip, string>()
  private readonly game: Game
  private readonly option: Option
  private readonly travel: TravelTime

  constructor(game: Game, option: Option, travel: TravelTime) {
    this.game = game
    this.option = option
    this.travel = travel
    const { robot, role } = option
    this.goals = game.goals.filter((goal) => role.goals.includes(goal.id) && (robot.score[goal.id]?.length ?? 0) > 0)
  }

  build(): PlanGraph {
    const { robot } = this.option
    const auto = this.option.auto === null ? null : robot.autos.find((routine) => routine.id === this.option.auto)
    if (auto === undefined)
      throw refusal('invalid', ['noRoutine', { routine: String(this.option.auto) }], ['option', 'auto'])
    const initial = this.node(auto ? auto.endsAt : this.option.start, auto ? auto.holding : robot.preload)
    for (let i = 0; i < this.nodes.length; i++) this.expand(i, this.nodes[i] as GraphNode)
    return { nodes: this.nodes, legs: this.legs, initial, goals: this.goals }
  }

  from(graph: PlanGraph, node: PlanNode): GraphLeg[] {
    for (const { at, load } of graph.nodes) this.node(at, load)
    const known = this.nodes.length
    const own: GraphNode = { ...node, legs: [] }
    this.expand(-1, own)
    if (this.nodes.length > known) throw new Error(`a leg from ${node.at} leads out of the graph`)
    return own.legs
  }

  private node(at: string, load: Load | null): number {
    const key = load ? `${at}|${load.piece}|${load.count}` : at
    const found = this.index.get(key)
    if (found !== undefined) return found
    if (this.nodes.length >= mostNodes) throw refusal('overBudget', ['tooManyNodes', { most: mostNodes }])
    this.nodes.push({ at, load: load && { piece: load.piece, count: load.count }, legs: [] })
    this.index.set(key, this.nodes.length - 1)
    return this.nodes.length - 1
  }

  private expand(i: number, node: GraphNode): void {
    if (node.load) this.scoring(i, node, node.load)
    else this.collecting(i, node)
    if (this.option.finish.mode !== 'skip') this.finishing(i, node)
  }

  private collecting(i: number, node: GraphNode): void {
    const { robot, role } = this.option
    for (const source of this.game.sources) {
      const trip = robot.collect[source.id]
      const carries = robot.carries[source.piece] ?? 0
      if (!trip || carries < 1 || !role.sources.includes(source.id)) continue
      for (const spot of source.spots)
        for (const load of loadsFor(carries))
          this.add(i, node, trip, spot.id, {
            action: { kind: 'collect', source: source.id, spot: spot.id, load },
            to: this.node(spot.id, { piece: source.piece, count: load }),
            worth: { kind: 'collect', source: source.id },
            load,
            tries: { success: trip.success, retry: trip.retry },
          })
    }
  }

  private scoring(i: number, node: GraphNode, held: Load): void {
    for (const [index, goal] of this.goals.entries()) {
      if (!goal.accepts.includes(held.piece)) continue
      for (const [entry, trip] of (this.option.robot.score[goal.id] ?? []).entries())
        for (const spot of goal.spots) {
          if (trip.spots !== 'any' && !trip.spots.includes(spot.id)) continue
          this.add(i, node, trip, spot.id, {
            action: { kind: 'score', goal: goal.id, entry, spot: spot.id },
            to: this.node(spot.id, null),
            worth: { kind: 'score', goal: goal.id, entry },
            load: held.count,
            goal: index,
            success: trip.success,
          })
        }
    }
  }

  private finishing(i: number, node: GraphNode): void {
    const { robot, role } = this.option
    for (const finish of this.game.finishes) {
      const trip = robot.finish[finish.id]
      if (!trip || !role.finishes.includes(finish.id)) continue
      const lesser = this.game.finishes.find((other) => other.id === trip.otherwise)
      for (const spot of finish.spots)
        this.add(i, node, trip, spot.id, {
          action: { kind: 'finish', finish: finish.id, spot: spot.id },
          to: -1,
          worth: { kind: 'finish', finish: finish.id },
          load: 0,
          success: trip.success,
          points: finish.points,
          otherwise: lesser?.points ?? 0,
        })
    }
  }

  private add(
    from: number,
    node: GraphNode,
    trip: Trip,
    spot: string,
    leg: Pick<GraphLeg, 'action' | 'to' | 'worth' | 'load'> & Partial<GraphLeg> & { tries?: LegSpec['tries'] },
  ): void {
    const { tries, ...rest } = leg
    const drive = 'whole' in trip ? null : { seconds: this.travel(node.at, spot), pace: this.option.robot.drive.pace }
    const full: GraphLeg = {
      goal: -1,
      success: 1,
      points: 0,
      otherwise: 0,
      ...rest,
      id: this.legs.length,
      from,
      spec: { trip: essence(trip), drive, load: Math.max(1, leg.load), ...(tries ? { tries } : {}) },
      key: this.keyOf(trip),
    }
    node.legs.push(full)
    this.legs.push(full)
  }

  private keyOf(trip: Trip): string {
    let key = this.keys.get(trip)
    if (key === undefined) {
      key = keyOf(essence(trip))
      this.keys.set(trip, key)
    }
    return key
  }
}

/** The part of a trip that its times depend on. */
const essence = (trip: Trip): Trip => ('whole' in trip ? { whole: trip.whole } : { stages: trip.stages })
