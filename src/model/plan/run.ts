import { addConvolution } from '../leg/pmf.ts'
import type { Problem } from './problem.ts'
import type { TimedLeg } from './timed.ts'

/** Mass that arrives over a stretch of time left: `mass[at + i]` arrives with `first + i` steps left. */
export interface Arrival {
  readonly mass: Float64Array
  readonly at: number
  readonly first: number
  readonly count: number
}

/**
 * Where the mass of decisions taken with `from` … `from + count − 1` steps left arrives, in one stretch. What the
 * buzzer cuts is left out. The part of the leg's distribution that is kept step by step is convolved with the run; the
 * few points of its far tail see the run as one mass at its mean, shared between the two nearest steps.
 * `scratch` is overwritten; the arrival is valid until the next one. Null where nothing arrives in time.
 */
export function arrivalOf(
  source: Float64Array,
  at: number,
  from: number,
  count: number,
  leg: TimedLeg,
  scratch: Float64Array,
): Arrival | null {
  const { reversed, shortest, late, lateAt } = leg
  if (from + count - 1 < shortest) return null
  const longest = late.length > 0 ? (lateAt[late.length - 1] as number) : shortest + reversed.length - 1
  const first = from - longest
  const length = count + longest - shortest
  scratch.fill(0, 0, length)
  const core = from - shortest - reversed.length + 1 - first
  addConvolution(scratch.subarray(core, length), source.subarray(at, at + count), reversed)
  if (late.length > 0) {
    let mass = 0
    let moment = 0
    for (let i = 0; i < count; i++) {
      mass += source[at + i] as number
      moment += i * (source[at + i] as number)
    }
    const mean = moment / mass
    const whole = Math.floor(mean)
    const share = mean - whole
    for (let k = 0; k < late.length; k++) {
      const m = mass * (late[k] as number)
      const place = longest - (lateAt[k] as number) + whole
      scratch[place] = (scratch[place] as number) + m * (1 - share)
      if (share > 0) scratch[place + 1] = (scratch[place + 1] as number) + m * share
    }
  }
  const cut = Math.max(0, -first)
  return { mass: scratch, at: cut, first: first + cut, count: length - cut }
}

/** Room for the arrivals of any run of at most `block` decisions. */
export function scratchFor(problem: Problem, block: number): Float64Array {
  return new Float64Array(block + Math.max(0, ...problem.timed.map((leg) => leg.end.mass.length)) + 64)
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
