import type { GraphNode, PlanGraph } from './graph.ts'

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

/** Room by dimension and index, for loops that ask for each of them. */
export const roomsAt = (rooms: Rooms): Int32Array[] =>
  rooms.most.map((_, d) => Int32Array.from({ length: rooms.size }, (_, r) => rooms.room(r, d)))

interface Placeable {
  /** The most pieces that could be placed on a goal in t steps from the luckiest node, and from the unluckiest. */
  readonly most: Int32Array
  readonly least: Int32Array
  /** The same as `most` where the robot may be put on another node in between: a bound that can be chained. */
  readonly chained: Int32Array
}

function placeableIn(graph: PlanGraph, shortest: readonly number[], goal: number, steps: number): Placeable {
  const row = steps + 1
  const best = new Int32Array(graph.nodes.length * row)
  const ways = graph.nodes.map((node) => waysFrom(node, shortest, goal))
  const most = new Int32Array(steps + 1)
  const least = new Int32Array(steps + 1)
  for (let t = 0; t <= steps; t++) {
    let low = Number.MAX_SAFE_INTEGER
    for (let n = 0; n < ways.length; n++) {
      const way = ways[n] as Int32Array
      let pieces = t > 0 ? (best[n * row + t - 1] as number) : 0
      for (let k = 0; k < way.length; k += 3) {
        const left = t - (way[k + 1] as number)
        if (left < 0) continue
        const after = (best[(way[k] as number) * row + left] as number) + (way[k + 2] as number)
        if (after > pieces) pieces = after
      }
      best[n * row + t] = pieces
      if (pieces > (most[t] as number)) most[t] = pieces
      if (pieces < low) low = pieces
    }
    least[t] = low
  }
  return { most, least, chained: chain(most) }
}

/** The legs from a node, three numbers each: where to, the fewest steps that it takes, and pieces that it may place. */
function waysFrom(node: GraphNode, shortest: readonly number[], goal: number): Int32Array {
  const quickest = new Map<string, [to: number, steps: number, pieces: number]>()
  for (const leg of node.legs) {
    if (leg.to < 0) continue
    const steps = shortest[leg.id] as number
    const pieces = leg.goal === goal ? leg.load : 0
    const known = quickest.get(`${leg.to} ${pieces}`)
    if (!known || steps < known[1]) quickest.set(`${leg.to} ${pieces}`, [leg.to, steps, pieces])
  }
  return Int32Array.from([...quickest.values()].flat())
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
