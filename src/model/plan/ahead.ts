import type { Problem } from './problem.ts'
import { fitting, type Table } from './table.ts'
import type { TimedLeg } from './timed.ts'

/** Times that are computed together. */
export const group = 4

/**
 * What follows each leg within a block of times, Σ_c f(c) · V(t − c), by leg, room and time: computed a group of four times
 * at once, when somebody asks for it.
 */
export class Ahead {
  /** Length of one room's row. */
  readonly width: number
  private readonly problem: Problem
  private readonly table: Table
  private readonly rows: Float64Array[]
  /** Which groups of a row are there, bit by bit. */
  private readonly there: Int32Array[]
  private from = 0

  /** @param block times in a block, at most 64 and no more than any leg takes */
  constructor(problem: Problem, table: Table, block: number) {
    this.problem = problem
    this.table = table
    this.width = block + group
    const rooms = problem.rooms.size
    this.rows = problem.timed.map((leg) => new Float64Array(leg.leg.to < 0 ? 0 : rooms * this.width))
    this.there = problem.timed.map((leg) => new Int32Array(leg.leg.to < 0 ? 0 : rooms))
  }

  /** Begin the block at time left `from`: the values of all times before it are in the table. */
  begin(from: number): void {
    this.from = from
    for (const there of this.there) there.fill(0)
  }

  /** Row of a leg: time from + j in room r is at r · width + j, where it was asked for. */
  row(leg: number): Float64Array {
    return this.rows[leg] as Float64Array
  }

  /** Computes the groups `first` … `last` of one leg in one room, where they are not there yet. */
  ask(leg: number, room: number, first: number, last: number): void {
    const there = this.there[leg] as Int32Array
    const have = there[room] as number
    for (let g = first; g <= last; g++) {
      if ((have >> g) & 1) continue
      let end = g
      while (end < last && !((have >> (end + 1)) & 1)) end++
      this.compute(leg, room, g * group, (end - g + 1) * group)
      g = end
    }
    there[room] = have | ((2 << last) - (1 << first))
  }

  private compute(id: number, room: number, begin: number, count: number): void {
    const timed = this.problem.timed[id] as TimedLeg
    const values = this.table.values[timed.leg.to] as Float64Array
    const row = room * this.table.row + this.table.pad
    const from = this.from + begin
    const out = this.rows[id] as Float64Array
    const at = room * this.width + begin
    const fit = fitting(timed.chance, timed.shortest, from + count - 1)
    if (fit > 0)
      convolveRow(
        out,
        at,
        count,
        timed.reversed,
        timed.chance.length - fit,
        values,
        row + from - timed.shortest - (fit - 1),
      )
    else out.fill(0, at, at + count)
    addLate(out, at, from, from + count - 1, timed, values, row)
  }
}

/** The far tail of a leg: out[at + j] += Σ_k late[k] · values[row + from + j − lateAt[k]], four j at a time. */
function addLate(
  out: Float64Array,
  at: number,
  from: number,
  to: number,
  leg: TimedLeg,
  values: Float64Array,
  row: number,
): void {
  const { late, lateAt } = leg
  for (let j = 0; from + j <= to; j += 4) {
    let s0 = 0
    let s1 = 0
    let s2 = 0
    let s3 = 0
    const place = row + from + j
    // Up to three steps after the buzzer are read as the zeros in front of the row.
    for (let k = 0; k < late.length && (lateAt[k] as number) <= from + j + 3; k++) {
      const f = late[k] as number
      const v = place - (lateAt[k] as number)
      s0 += f * (values[v] as number)
      s1 += f * (values[v + 1] as number)
      s2 += f * (values[v + 2] as number)
      s3 += f * (values[v + 3] as number)
    }
    out[at + j] = (out[at + j] as number) + s0
    out[at + j + 1] = (out[at + j + 1] as number) + s1
    out[at + j + 2] = (out[at + j + 2] as number) + s2
    out[at + j + 3] = (out[at + j + 3] as number) + s3
  }
}

/**
 * out[at + j] = Σ_m reversed[cut + m] · values[start + j + m] for j = 0 … count − 1. Four j at a time share each load of
 * a value, and four m at a time leave the sliding window in registers.
 */
function convolveRow(
  out: Float64Array,
  at: number,
  count: number,
  reversed: Float64Array,
  cut: number,
  values: Float64Array,
  start: number,
): void {
  const end = reversed.length
  for (let j = 0; j < count; j += 4) {
    const place = start + j - cut + 3
    let s0 = 0
    let s1 = 0
    let s2 = 0
    let s3 = 0
    let v0 = values[start + j] as number
    let v1 = values[start + j + 1] as number
    let v2 = values[start + j + 2] as number
    let v3 = 0
    let m = cut
    for (; m + 3 < end; m += 4) {
      let f = reversed[m] as number
      v3 = values[place + m] as number
      s0 += f * v0
      s1 += f * v1
      s2 += f * v2
      s3 += f * v3
      f = reversed[m + 1] as number
      v0 = values[place + m + 1] as number
      s0 += f * v1
      s1 += f * v2
      s2 += f * v3
      s3 += f * v0
      f = reversed[m + 2] as number
      v1 = values[place + m + 2] as number
      s0 += f * v2
      s1 += f * v3
      s2 += f * v0
      s3 += f * v1
      f = reversed[m + 3] as number
      v2 = values[place + m + 3] as number
      s0 += f * v3
      s1 += f * v0
      s2 += f * v1
      s3 += f * v2
    }
    for (; m < end; m++) {
      const f = reversed[m] as number
      v3 = values[place + m] as number
      s0 += f * v0
      s1 += f * v1
      s2 += f * v2
      s3 += f * v3
      v0 = v1
      v1 = v2
      v2 = v3
    }
    out[at + j] = s0
    out[at + j + 1] = s1
    out[at + j + 2] = s2
    out[at + j + 3] = s3
  }
}
