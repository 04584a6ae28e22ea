import type { Point } from '../documents/types.ts'
import { type Corner, freeCorners } from './corners.ts'
import type { FreeSpace } from './freeSpace.ts'
import { CostQueue } from './queue.ts'
import { ANGLE, type Approach, approaches, links, type Touch } from './tangents.ts'

/** A node is an arrival at an arc by a line; from there one turns on, and leaves by another line. */
interface Arrival {
  readonly touch: Touch
  /** The touch at the line's other end. */
  readonly leaving: Touch
  readonly length: number
}

/** The shortest ways from one point to all arrivals. */
export interface Tree {
  readonly approaches: readonly Approach[]
  readonly lengths: Float64Array
  /** The arrival before, or -1 - i for approach i of the point. */
  readonly before: Int32Array
}

/** How a shortest way ends: the last arrival (or -1 - i for approach i), and the touch at which it leaves the arc. */
export interface Ending {
  readonly last: number
  readonly approach: Approach
}

/** The tangent graph of a free space: what does not depend on where a route begins and ends. */
export class TangentGraph {
  readonly space: FreeSpace
  readonly corners: readonly Corner[]
  readonly arrivals: readonly Arrival[]
  /** Per corner, the arrivals there. */
  private readonly at: readonly number[][]
  /** Per arrival, the arrivals that can follow it, and at what length. */
  private readonly next: readonly { to: number; length: number }[][]

  constructor(space: FreeSpace) {
    this.space = space
    this.corners = freeCorners(space)
    this.arrivals = links(space, this.corners).flatMap(({ ends: [a, b], length }) => [
      { touch: b, leaving: a, length },
      { touch: a, leaving: b, length },
    ])
    this.at = this.corners.map(() => [])
    this.arrivals.forEach(({ touch }, i) => {
      this.at[touch.corner]!.push(i)
    })
    this.next = this.arrivals.map(({ touch }) => this.following(touch))
  }

  /** All lines that can be taken after arriving at a touch. */
  private following(touch: Touch): { to: number; length: number }[] {
    return this.at[touch.corner]!.flatMap((back) => {
      // Arrivals come in pairs, one per direction: the partner leaves from where this one arrives.
      const to = back ^ 1
      const { leaving, length } = this.arrivals[to]!
      const turn = turnBetween(touch, leaving)
      return turn === null ? [] : [{ to, length: turn * this.space.radius + length }]
    })
  }

  treeFrom(point: Point): Tree {
    const found = approaches(this.space, this.corners, point)
    const lengths = new Float64Array(this.arrivals.length).fill(Number.POSITIVE_INFINITY)
    const before = new Int32Array(this.arrivals.length)
    const queue = new CostQueue()
    const reach = (to: number, length: number, from: number) => {
      if (length >= lengths[to]!) return
      lengths[to] = length
      before[to] = from
      queue.push(to, length)
    }
    found.forEach((approach, i) => {
      for (const { to, length } of this.following(approach.touch)) reach(to, approach.length + length, -1 - i)
    })
    while (queue.size > 0) {
      const { item, cost } = queue.pop()
      if (cost > lengths[item]!) continue
      for (const { to, length } of this.next[item]!) reach(to, cost + length, item)
    }
    return { approaches: found, lengths, before }
  }

  /** The shortest way from the tree's root to the point that has these approaches, or null. */
  ending(tree: Tree, targets: readonly Approach[]): Ending | null {
    let best: Ending | null = null
    let least = Number.POSITIVE_INFINITY
    const offer = (last: number, touch: Touch, length: number, approach: Approach) => {
      const turn = turnBetween(touch, approach.touch)
      if (turn === null) return
      const total = length + turn * this.space.radius + approach.length
      // Arrivals that can not be reached are infinitely far, and so never less.
      if (total >= least) return
      least = total
      best = { last, approach }
    }
    for (const target of targets) {
      tree.approaches.forEach((approach, i) => {
        offer(-1 - i, approach.touch, approach.length, target)
      })
      for (const arrival of this.at[target.touch.corner]!) {
        offer(arrival, this.arrivals[arrival]!.touch, tree.lengths[arrival]!, target)
      }
    }
    return best
  }
}

/** The turn on an arc from where one arrives to where one leaves (rad), or null if they do not go together. */
export function turnBetween(arriving: Touch, leaving: Touch): number | null {
  if (arriving.corner !== leaving.corner || arriving.part !== leaving.part || arriving.sense === leaving.sense)
    return null
  const turn = (leaving.angle - arriving.angle) * leaving.sense
  return turn < -ANGLE ? null : Math.max(0, turn)
}
