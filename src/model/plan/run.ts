import { addConvolution } from '../leg/pmf.ts'
import type { Problem } from './problem.ts'
import type { TimedLeg } from './timed.ts'

/**
 * Mass that arrives over a stretch of time left, `mass[at + i]` with `first + i` steps left, and at few later times:
 * `lateMass[k]` with `lateAt[k]` steps left, k below `lateCount`.
 */
export interface Arrival {
  readonly mass: Float64Array
  readonly at: number
  readonly first: number
  readonly count: number
  readonly lateAt: Int32Array
  readonly lateMass: Float64Array
  readonly lateCount: number
}

/** A mass that arrives all at once. */
export const atOnce = (mass: number, t: number): Arrival => ({
  mass: Float64Array.of(mass),
  at: 0,
  first: t,
  count: 1,
  lateAt: new Int32Array(0),
  lateMass: new Float64Array(0),
  lateCount: 0,
})

/** Arrivals of runs of decisions, one after the other: each overwrites the one before. */
export class Arrivals {
  private readonly mass: Float64Array
  private readonly lateAt: Int32Array
  private readonly lateMass: Float64Array

  /** @param block the longest run */
  constructor(problem: Problem, block: number) {
    this.mass = new Float64Array(block + Math.max(0, ...problem.timed.map((leg) => leg.chance.length)) + 8)
    const late = 2 * Math.max(0, ...problem.timed.map((leg) => leg.late.length))
    this.lateAt = new Int32Array(late)
    this.lateMass = new Float64Array(late)
  }

  /**
   * Where the mass of decisions taken with `from` … `from + count − 1` steps left arrives. What the buzzer cuts is left
   * out. The part of the leg's distribution that is kept step by step is convolved with the run; the few points of its
   * far tail see the run as one mass at its mean, shared between the two nearest steps. Null where nothing arrives.
   */
  of(source: Float64Array, at: number, from: number, count: number, leg: TimedLeg): Arrival | null {
    const { reversed, shortest } = leg
    if (from + count - 1 < shortest) return null
    const { mass, lateAt, lateMass } = this
    const first = from - shortest - reversed.length + 1
    const length = count + reversed.length - 1
    mass.fill(0, 0, length)
    addConvolution(mass.subarray(0, length), source.subarray(at, at + count), reversed)
    const cut = Math.max(0, -first)
    const lateCount = leg.late.length > 0 ? this.later(source, at, from, count, leg) : 0
    return { mass, at: cut, first: first + cut, count: length - cut, lateAt, lateMass, lateCount }
  }

  private later(source: Float64Array, at: number, from: number, count: number, leg: TimedLeg): number {
    let mass = 0
    let moment = 0
    for (let i = 0; i < count; i++) {
      mass += source[at + i] as number
      moment += i * (source[at + i] as number)
    }
    const mean = moment / mass
    const whole = Math.floor(mean)
    const share = mean - whole
    let used = 0
    for (let k = 0; k < leg.late.length; k++) {
      const m = mass * (leg.late[k] as number)
      const t = from + whole - (leg.lateAt[k] as number)
      if (t >= 0) {
        this.lateAt[used] = t
        this.lateMass[used++] = m * (1 - share)
      }
      if (t >= -1 && share > 0) {
        this.lateAt[used] = t + 1
        this.lateMass[used++] = m * share
      }
    }
    return used
  }
}

/** How many times can be taken together: no leg ends within them. */
export function blockOf(problem: Problem): number {
  return Math.min(64, problem.steps + 1, ...problem.timed.filter((leg) => leg.leg.to >= 0).map((leg) => leg.shortest))
}

/** Blocks of time left from teleop's start down to 0, cut where a waiting robot's call comes. */
export function blocks(problem: Problem): { from: number; to: number }[] {
  const size = blockOf(problem)
  const call = problem.rules.finishFrom
  const out: { from: number; to: number }[] = []
  for (let to = problem.steps; to >= 0; ) {
    let from = Math.max(0, to - size + 1)
    if (call >= from && call < to) from = call + 1
    out.push({ from, to })
    to = from - 1
  }
  return out
}

/** Clipping of rooms, prepared for runs of times. */
export class Clip {
  /** Least time left from which on room r needs no clipping. */
  readonly clearFrom: Int32Array
  private readonly stretches: Int32Array[] = []
  private readonly problem: Problem

  constructor(problem: Problem) {
    this.problem = problem
    const { rooms, steps } = problem
    this.clearFrom = new Int32Array(rooms.size)
    for (let r = 0; r < rooms.size; r++) {
      let t = steps
      while (t > 0 && this.fits(r, t - 1)) t--
      this.clearFrom[r] = t
    }
  }

  private fits(r: number, t: number): boolean {
    const { rooms } = this.problem
    return rooms.most.every((_, d) => rooms.room(r, d) <= (rooms.high[d]?.[t] as number))
  }

  /** The end, at most `end`, of the times from t on at which room r counts as the same. */
  sameUntil(r: number, t: number, end: number): number {
    if (t >= (this.clearFrom[r] as number)) return end
    this.stretches[r] ??= this.stretchesOf(r)
    return Math.min(end, (this.stretches[r] as Int32Array)[t] as number)
  }

  private stretchesOf(r: number): Int32Array {
    const out = new Int32Array(this.clearFrom[r] as number)
    let end = out.length
    for (let t = out.length - 1; t >= 0; t--) {
      out[t] = end
      if (t > 0 && this.at(r, t - 1) !== this.at(r, t)) end = t
    }
    return out
  }

  /** Room r as it counts with t steps left. */
  at(r: number, t: number): number {
    if (t >= (this.clearFrom[r] as number)) return r
    const { rooms } = this.problem
    if (rooms.high.length === 1) return Math.min(r, (rooms.high[0] as Int32Array)[t] as number)
    let clipped = 0
    for (let d = 0; d < rooms.high.length; d++)
      clipped += Math.min(rooms.room(r, d), (rooms.high[d] as Int32Array)[t] as number) * (rooms.strides[d] as number)
    return clipped
  }
}

/** Stretches of one row with the same action and mass above `negligible`: calls `each(from, count, action)`. */
export function runsOf(
  mass: Float64Array,
  at: number,
  from: number,
  to: number,
  actions: Int16Array,
  policyAt: number,
  negligible: number,
  each: (from: number, count: number, action: number) => void,
): void {
  let t = from
  while (t <= to) {
    if ((mass[at + t] as number) < negligible) {
      t++
      continue
    }
    const action = actions[policyAt + t] as number
    let end = t + 1
    while (end <= to && (mass[at + end] as number) >= negligible && actions[policyAt + end] === action) end++
    each(t, end - t, action)
    t = end
  }
}
