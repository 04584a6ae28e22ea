import type { Workspace } from '../kernel/index.ts'
import type { Problem } from './problem.ts'
import { fitting, type TablePlaces } from './table.ts'
import type { TimedLeg } from './timed.ts'

/** Times that are computed together: as many as the inner loops take at once. */
export const group = 8

/**
 * What follows each leg within a block of times, Σ_c f(c) · V(t − c), by leg, room and time: computed a group of times at
 * once, when somebody asks for it.
 */
export class Ahead {
  /** Length of one room's row. */
  readonly width: number
  private readonly problem: Problem
  private readonly table: TablePlaces
  private readonly space: Workspace
  /** Places in the workspace of each leg's rows, chances (last first), and far tail. */
  private readonly rows: number[]
  private readonly reversed: number[]
  private readonly late: number[]
  private readonly lateAt: number[]
  /** Which groups of a row are there, bit by bit. */
  private readonly there: Int32Array[]
  private from = 0

  /** @param block times in a block, at most 64 and no more than any leg takes */
  constructor(problem: Problem, table: TablePlaces, block: number, space: Workspace) {
    this.problem = problem
    this.table = table
    this.space = space
    this.width = block + group
    const rooms = problem.rooms.size
    const follows = problem.timed.map((leg) => leg.leg.to >= 0)
    const placed = (of: (leg: TimedLeg) => number) => problem.timed.map((leg, i) => (follows[i] ? of(leg) : 0))
    this.rows = placed(() => space.take(rooms * this.width))
    this.reversed = placed((leg) => space.copied(leg.reversed))
    this.late = placed((leg) => space.copied(leg.late))
    this.lateAt = placed((leg) => space.copiedWhole(leg.lateAt))
    this.there = follows.map((follow) => new Int32Array(follow ? rooms : 0))
  }

  /** Begin the block at time left `from`: the values of all times before it are in the table. */
  begin(from: number): void {
    this.from = from
    for (const there of this.there) there.fill(0)
  }

  /** Place in the workspace of a leg's row: time from + j in room r is r · width + j further, where it was asked for. */
  row(leg: number): number {
    return this.rows[leg] as number
  }

  /** Computes the groups `first` … `last` of one leg in one room, where they are not there yet. */
  ask(leg: number, room: number, first: number, last: number): void {
    const there = this.there[leg] as Int32Array
    const have = there[room] as number
    const wanted = (2 << last) - (1 << first)
    if ((have & wanted) === wanted) return
    for (let g = first; g <= last; g++) {
      if ((have >> g) & 1) continue
      let end = g
      while (end < last && !((have >> (end + 1)) & 1)) end++
      this.compute(leg, room, g * group, (end - g + 1) * group)
      g = end
    }
    there[room] = have | wanted
  }

  /** Computes the first group of one leg in `many` rooms from `room` on, where it is not there yet. */
  askRooms(leg: number, room: number, many: number): void {
    const there = this.there[leg] as Int32Array
    for (let r = room; r < room + many; r++) {
      if (there[r]) continue
      const first = r
      while (r < room + many && !there[r]) there[r++] = 1
      this.computeRooms(leg, first, r - first)
    }
  }

  private computeRooms(id: number, room: number, many: number): void {
    const { from, width, table } = this
    const timed = this.problem.timed[id] as TimedLeg
    const fit = fitting(timed.chance, timed.shortest, from + group - 1)
    const shift = timed.shortest + fit - 1
    const values = (table.values[timed.leg.to] as number) + room * table.row + table.pad + from
    this.space.kernel.followRows(
      (this.rows[id] as number) + room * width,
      width,
      (this.reversed[id] as number) + timed.chance.length - fit,
      fit,
      values - shift,
      table.row,
      many,
      this.late[id] as number,
      this.lateAt[id] as number,
      timed.late.length,
      shift,
      from,
    )
  }

  private compute(id: number, room: number, begin: number, count: number): void {
    const timed = this.problem.timed[id] as TimedLeg
    const { kernel } = this.space
    const row = (this.table.values[timed.leg.to] as number) + room * this.table.row + this.table.pad
    const from = this.from + begin
    const out = (this.rows[id] as number) + room * this.width + begin
    const fit = fitting(timed.chance, timed.shortest, from + count - 1)
    const cut = timed.chance.length - fit
    const first = row + from - timed.shortest - (fit - 1)
    kernel.correlate(out, count, (this.reversed[id] as number) + cut, fit, first, 1)
    // Up to seven steps after the buzzer are read as the zeros in front of the row.
    const { length } = timed.late
    kernel.addLagged(out, count, this.late[id] as number, this.lateAt[id] as number, length, row + from, from)
  }
}
