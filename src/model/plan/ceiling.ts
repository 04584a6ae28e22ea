import type { Floor } from './floor.ts'
import { largestLoad } from './graph.ts'
import type { Problem } from './problem.ts'
import { roomsAt } from './rooms.ts'
import type { TablePlaces } from './table.ts'

/** Values that differ by no more than this (points) are taken for equal. */
const equal = 1e-10

/** The rooms of a block of times, by dimension. */
export interface Within {
  /** Rooms below this can not be met; those below `least` are as good as it; no more than `high` can be used. */
  readonly low: readonly number[]
  readonly least: readonly number[]
  readonly high: readonly number[]
  /** Rooms above this are as good as it. */
  top: readonly number[]
}

/**
 * From how much room on more of it is worth nothing, found while the values are: rooms above are not computed.
 *
 * Let a load be L pieces at most. Where the values of the rooms r − L … r are equal at every node and for all times left up
 * to t, those of room r + 1 are equal to them, too: whatever is done there leads with less time left to rooms of which the
 * same holds, and pays the same, since r ≥ L. By induction over time, the equality holds for every room above.
 * So the top L + 1 rooms of every block are compared.
 */
export class Ceiling {
  private readonly problem: Problem
  private readonly places: TablePlaces
  /** Room by dimension and room index. */
  private readonly roomAt: readonly Int32Array[]
  private readonly values: readonly Float64Array[]
  /** Largest load by dimension. */
  private readonly loads: number[]
  /** By dimension, the least room for which that holds for all times so far. */
  private readonly found: number[]

  /** @param values of the table, by node; @param every whether all rooms that can be used are wanted */
  constructor(problem: Problem, places: TablePlaces, values: readonly Float64Array[], every: boolean) {
    const { rooms, graph } = problem
    this.problem = problem
    this.roomAt = roomsAt(rooms)
    this.places = places
    this.values = values
    this.loads = rooms.goals.map((goal) => largestLoad(graph, goal))
    this.found = every ? rooms.most.slice() : this.loads.slice()
  }

  /** The rooms of the block of times left `from` … `to`, as far as is known beforehand. */
  within(from: number, to: number, floor: Floor | null): Within {
    const { goals, high: most, low: fewest } = this.problem.rooms
    const high = goals.map((_, d) => most[d]?.[to] as number)
    const low = goals.map((_, d) => Math.min(fewest[d]?.[from] as number, high[d] as number))
    const least = low.map((room, d) => Math.max(room, Math.min(high[d] as number, lowestOf(floor?.[d], from, to))))
    return { low, least, high, top: high.map((_, d) => this.topOf(d, least, high)) }
  }

  private topOf(d: number, least: readonly number[], high: readonly number[]): number {
    return Math.min(
      high[d] as number,
      Math.max(this.found[d] as number, (least[d] as number) + (this.loads[d] as number)),
    )
  }

  /** Indices of the rooms from `least` to `top`, without those up to `before`, if it is given. */
  rooms({ least, top }: Within, before: readonly number[] | null = null): number[] {
    const { rooms } = this.problem
    const out: number[] = []
    for (let r = 0; r < rooms.size; r++) {
      let within = true
      let known = before !== null
      for (let d = 0; d < top.length; d++) {
        const room = this.room(r, d)
        if (room < (least[d] as number) || room > (top[d] as number)) within = false
        if (before && room > (before[d] as number)) known = false
      }
      if (within && !known) out.push(r)
    }
    return out
  }

  /** The rooms that are worth as much as another one, `clipped`, as runs of `many` indices from `first` on. What can not be met is left out. */
  clipped({ top, low, least }: Within): { first: number; many: number; clipped: number }[] {
    const { rooms } = this.problem
    const out: { first: number; many: number; clipped: number }[] = []
    for (let r = 0; r < rooms.size; r++) {
      let clipped = 0
      let met = true
      for (let d = 0; d < top.length; d++) {
        const room = this.room(r, d)
        if (room < (low[d] as number)) met = false
        const counts = Math.max(least[d] as number, Math.min(room, top[d] as number))
        clipped += counts * (rooms.strides[d] as number)
      }
      if (!met || clipped === r) continue
      const last = out.at(-1)
      if (last && last.clipped === clipped && last.first + last.many === r) last.many++
      else out.push({ first: r, many: 1, clipped })
    }
    return out
  }

  private room(r: number, d: number): number {
    return this.roomAt[d]?.[r] as number
  }

  /** Raises `top` as the values of its rooms, which are in the table, demand; the rooms that must be computed, too. */
  lifted(within: Within, from: number, to: number): number[] {
    const before = within.top
    for (const d of before.keys()) {
      const lowest = Math.max(within.least[d] as number, (this.found[d] as number) - (this.loads[d] as number))
      let room = before[d] as number
      while (room > lowest && !this.differ(within, d, room, { from, to })) room--
      if (room > lowest) this.found[d] = room + (this.loads[d] as number)
    }
    within.top = before.map((_, d) => this.topOf(d, within.least, within.high))
    return within.top.some((top, d) => top > (before[d] as number)) ? this.rooms(within, before) : []
  }

  /** Whether one room more than room − 1 in dimension d is worth anything. */
  private differ(within: Within, d: number, room: number, { from, to }: { from: number; to: number }): boolean {
    const { rooms } = this.problem
    const { row, pad } = this.places
    const less = (rooms.strides[d] as number) * row
    for (const r of this.rooms({ ...within, top: within.top.map((top, e) => (e === d ? room : top)) })) {
      if (this.room(r, d) !== room) continue
      const start = r * row + pad
      for (const values of this.values)
        for (let place = start + from; place <= start + to; place++)
          if (Math.abs((values[place] as number) - (values[place - less] as number)) > equal) return true
    }
    return false
  }
}

function lowestOf(floor: Int32Array | undefined, from: number, to: number): number {
  let lowest = floor ? Number.MAX_SAFE_INTEGER : 0
  if (floor) for (let t = from; t <= to; t++) lowest = Math.min(lowest, floor[t] as number)
  return lowest
}
