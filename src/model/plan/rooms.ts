import type { PlanGraph } from './graph.ts'

/**
 * Room left in the goals that have a capacity, as one index: dimension d counts 0 … most[d].
 * Room is clipped at the most pieces that the robot can still place, which changes nothing and keeps the table small.
 */
export interface Rooms {
  /** Goals (indices into the graph's) with a capacity. */
  readonly goals: readonly number[]
  /** Dimension of each of the graph's goals, -1 where it has no capacity. */
  readonly dimensionOf: readonly number[]
  readonly most: readonly number[]
  readonly strides: readonly number[]
  readonly size: number
  /** Room in dimension d of index r. */
  room(r: number, d: number): number
  index(room: readonly number[]): number
  /** high[d][t], low[d][t]: rooms that matter with t steps left. */
  readonly high: readonly Int32Array[]
  readonly low: readonly Int32Array[]
}

/**
 * @param shortest least duration of each of the graph's legs (steps, at least 1)
 * @param initial rooms per capacity goal that teleop may begin with
 * @param steps teleop in steps
 */
export function roomsOf(
  graph: PlanGraph,
  shortest: readonly number[],
  initial: readonly number[][],
  steps: number,
): Rooms {
  const goals = graph.goals.map((_, i) => i).filter((i) => graph.goals[i]?.capacity !== null)
  const dimensionOf = graph.goals.map((_, i) => goals.indexOf(i))
  const high: Int32Array[] = []
  const low: Int32Array[] = []
  const most: number[] = []
  for (const [d, goal] of goals.entries()) {
    const placeable = placeableIn(graph, shortest, goal, steps)
    const rooms = initial.map((room) => room[d] as number)
    const fewest = Math.min(...rooms)
    const top = Math.min(Math.max(...rooms), placeable.most[steps] as number)
    most.push(top)
    high.push(placeable.most.map((n) => Math.min(n, top)))
    // Rooms below this can not be met with t steps left; a node that can place less than that needs its own clip.
    low.push(
      placeable.least.map((n, t) => Math.min(n, top, Math.max(0, fewest - (placeable.chained[steps - t] as number)))),
    )
  }
  const strides: number[] = []
  let size = 1
  for (const top of most) {
    strides.push(size)
    size *= top + 1
  }
  return {
    goals,
    dimensionOf,
    most,
    strides,
    size,
    room: (r, d) => Math.floor(r / (strides[d] as number)) % ((most[d] as number) + 1),
    index: (room) => room.reduce((sum, n, d) => sum + Math.min(n, most[d] as number) * (strides[d] as number), 0),
    high,
    low,
  }
}

interface Placeable {
  /** The most pieces that could be placed on a goal in t steps from the luckiest node, and from the unluckiest. */
  readonly most: Int32Array
  readonly least: Int32Array
  /** The same as `most` where the robot may be put on another node in between: a bound that can be chained. */
  readonly chained: Int32Array
}

function placeableIn(graph: PlanGraph, shortest: readonly number[], goal: number, steps: number): Placeable {
  const best = graph.nodes.map(() => new Int32Array(steps + 1))
  const most = new Int32Array(steps + 1)
  const least = new Int32Array(steps + 1)
  for (let t = 0; t <= steps; t++) {
    let low = Number.MAX_SAFE_INTEGER
    for (const [n, node] of graph.nodes.entries()) {
      const own = best[n] as Int32Array
      let pieces = t > 0 ? (own[t - 1] as number) : 0
      for (const leg of node.legs) {
        const left = t - (shortest[leg.id] as number)
        if (leg.to < 0 || left < 0) continue
        const after = ((best[leg.to] as Int32Array)[left] as number) + (leg.goal === goal ? leg.load : 0)
        if (after > pieces) pieces = after
      }
      own[t] = pieces
      if (pieces > (most[t] as number)) most[t] = pieces
      if (pieces < low) low = pieces
    }
    least[t] = low
  }
  return { most, least, chained: chain(most) }
}

function chain(most: Int32Array): Int32Array {
  const out = most.slice()
  // Only where the count rises can a split gain anything.
  const rises = [...most.keys()].filter((t) => t > 0 && (most[t] as number) > (most[t - 1] as number))
  for (let t = 1; t < out.length; t++) {
    let best = Math.max(out[t] as number, out[t - 1] as number)
    for (const first of rises) {
      if (first > t) break
      const pieces = (most[first] as number) + (out[t - first] as number)
      if (pieces > best) best = pieces
    }
    out[t] = best
  }
  return out
}
