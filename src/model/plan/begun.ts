import type { Workspace } from '../kernel/index.ts'
import type { GraphNode } from './graph.ts'
import type { Problem } from './problem.ts'
import { longest, PlacedLegs } from './run.ts'
import type { TimedLeg } from './timed.ts'
import { Vectors } from './vectors.ts'
import type { Waiting } from './waiting.ts'

/** Zeros on either side of a block's masses, which the kernel reads. */
const pad = 8

/**
 * The legs that one node's decisions begin within a block of times, by the room that they lead to. What several rooms send
 * there is put together before it is carried through the leg: masses are few, arrivals are many.
 */
export class Begun {
  private readonly problem: Problem
  private readonly space: Workspace
  private readonly legs: PlacedLegs
  private readonly least: number
  private readonly masses: Vectors
  /** Vector by action · rooms + room, −1 where nothing is begun; those that are in use. */
  private readonly slots: Int32Array
  private readonly used: number[] = []
  private from = 0
  /** Whether something has arrived within the block. */
  again = false

  /** @param least smaller masses need not arrive */
  constructor(problem: Problem, space: Workspace, least: number) {
    const { nodes } = problem.graph
    this.problem = problem
    this.space = space
    this.least = least
    this.legs = new PlacedLegs(space)
    this.masses = new Vectors(space, longest + 2 * pad)
    this.slots = new Int32Array(Math.max(0, ...nodes.map(({ legs }) => legs.length)) * problem.rooms.size).fill(-1)
  }

  /** The block begins at time left `from`. */
  begin(from: number): void {
    this.from = from
  }

  /** With a chance of so much each, `count` masses from place `source` on begin a leg to room r, with `t` steps left and more. */
  add(action: number, r: number, source: number, t: number, count: number, chance: number): void {
    if (chance <= 0) return
    const { masses, slots } = this
    const key = action * this.problem.rooms.size + r
    let slot = slots[key] as number
    if (slot < 0) {
      slot = masses.take(key)
      slots[key] = slot
      this.used.push(slot)
    }
    const at = t - this.from + pad
    this.space.kernel.addScaled((masses.place[slot] as number) + at, source, count, chance)
    masses.widen(slot, at, at + count - 1)
  }

  /** Everything that the node has begun arrives. */
  carry(node: GraphNode, waiting: Waiting): void {
    const { problem, masses, slots } = this
    const { size } = problem.rooms
    for (const slot of this.used) {
      const key = masses.tag[slot] as number
      const leg = node.legs[Math.floor(key / size)] as GraphNode['legs'][number]
      this.follow(slot, problem.timed[leg.id] as TimedLeg, leg.to * size + (key % size), waiting)
      masses.clearFrom(slot, 0)
      masses.give(slot)
      slots[key] = -1
    }
    this.used.length = 0
  }

  private follow(slot: number, leg: TimedLeg, to: number, waiting: Waiting): void {
    const { masses, space, least } = this
    const low = masses.low[slot] as number
    const count = (masses.high[slot] as number) - low + 1
    const from = this.from + low - pad
    const { shortest, reversed, late } = leg
    const latest = from + count - 1 - shortest
    if (latest < 0) return
    const at = this.legs.of(leg)
    const out = waiting.place(to)
    const source = (masses.place[slot] as number) + low
    const earliest = space.kernel.carry(
      out,
      from,
      source,
      count,
      at.reversed,
      reversed.length,
      shortest,
      at.late,
      at.lateAt,
      late.length,
      least,
    )
    waiting.widen(to, earliest, latest)
    if (latest >= this.from) this.again = true
  }
}
