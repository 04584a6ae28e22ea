import type { Option } from '../documents/types.ts'
import type { LegBuilder } from '../leg/builder.ts'
import { graphOf, legsAt, type PlanGraph } from '../plan/graph.ts'
import type { PlanNode } from '../plan/types.ts'
import { Choices } from './choices.ts'
import type { Ground } from './ground.ts'
import { type Kept, Player, type Stand } from './player.ts'

/** A designed robot: it does what its plan of section 4 says is worth most among what is possible now. */
export class PlannedPlayer extends Player {
  readonly graph: PlanGraph
  readonly builder: LegBuilder
  readonly initial: Stand
  readonly mostWords: number
  /** Choices at the drive's own speed. */
  readonly choices: Choices
  private readonly slowed = new Map<number, Choices>()

  /** @throws ModelError as the plan of the option does */
  constructor(ground: Ground, option: Option, kept: Kept) {
    super(ground, option, kept)
    this.builder = kept.builder
    this.graph = graphOf(ground.game, option, this.travel)
    for (const node of this.graph.nodes) this.add(node.at, node.load, this.stands.length)
    for (const [n, node] of this.graph.nodes.entries()) this.prepare(this.stands[n] as Stand, node.legs)
    this.initial = this.stands[this.graph.initial] as Stand
    this.mostWords = Math.max(0, ...this.stands.flatMap(({ legs }) => legs.map(({ words }) => words)))
    this.choices = new Choices(this, 0)
  }

  /** Choices of a robot whose drives take (1 + slowdown) times as long, because it is marked. */
  choicesAt(slowdown: number): Choices {
    if (slowdown === 0) return this.choices
    const found = this.slowed.get(slowdown) ?? new Choices(this, slowdown)
    this.slowed.set(slowdown, found)
    return found
  }

  protected legsFrom(node: PlanNode) {
    return legsAt(this.game, this.option, this.travel, { graph: this.graph, node })
  }
}
