import type { Workspace } from '../kernel/index.ts'
import type { Problem } from './problem.ts'
import type { Rooms } from './rooms.ts'
import type { TimedLeg } from './timed.ts'

/** Times that are taken together: what arrives within them is taken up again. */
const block = 64

/**
 * Mass that arrives over a stretch of time left: in the workspace from place `at`, `count` masses with `first` steps left
 * and more.
 */
export interface Arrival {
  readonly at: number
  readonly first: number
  readonly count: number
  /** A bound of every single mass. */
  readonly most: number
}

/** A mass that arrives all at once. */
export const atOnce = (space: Workspace, mass: number, t: number): Arrival => ({
  at: space.copied(Float64Array.of(mass)),
  first: t,
  count: 1,
  most: mass,
})

interface Placed {
  /** The leg's chances, last first, with zeros around them. */
  readonly reversed: number
  readonly late: number
  readonly lateAt: number
  /** The largest of them all. */
  readonly peak: number
}

/** Arrivals of runs of decisions, one after the other: each overwrites the one before. */
export class Arrivals {
  private readonly space: Workspace
  /** Place of the mass that arrives when the match ends; what would arrive later goes in front of it, unread. */
  private readonly zero: number
  private readonly least: number
  private readonly placed = new Map<TimedLeg, Placed>()

  /** @param least smaller masses need not arrive */
  constructor(problem: Problem, space: Workspace, least: number) {
    const follows = problem.timed.filter((leg) => leg.leg.to >= 0)
    const before = 2 * block + Math.max(0, ...follows.map((leg) => leg.chance.length))
    this.space = space
    this.least = least
    this.zero = space.take(before + problem.steps + block) + before
  }

  /**
   * Where the mass of decisions taken with `from` … `from + count − 1` steps left arrives; the masses are in the workspace
   * from place `source` on. What the buzzer cuts is left out. Null where nothing arrives.
   */
  of(source: number, from: number, count: number, leg: TimedLeg): Arrival | null {
    const { shortest } = leg
    if (from + count - 1 < shortest) return null
    const { space, zero } = this
    const { reversed, late, lateAt, peak } = this.placeOf(leg)
    const core = from - shortest - leg.reversed.length + 1
    const { most, sum } = extent(space.data, source, count)
    const points = this.pointsOf(from + count, most, leg)
    const low = Math.max(0, points > 0 ? Math.min(core, from - (leg.lateAt[points - 1] as number)) : core)
    if (low < core) space.data.fill(0, zero + low, zero + core)
    space.kernel.convolve(zero + core, source, count, reversed, leg.reversed.length)
    if (points > 0) space.kernel.scatter(zero + from, source, count, late, lateAt, points)
    return { at: zero + low, first: low, count: from + count - shortest - low, most: Math.min(most, sum * peak) }
  }

  /** How many points of the far tail matter: neither cut by the buzzer nor too little. */
  private pointsOf(end: number, most: number, { late, lateAt }: TimedLeg): number {
    let points = late.length
    while (points > 0 && ((lateAt[points - 1] as number) >= end || most * (late[points - 1] as number) < this.least))
      points--
    return points
  }

  private placeOf(leg: TimedLeg): Placed {
    let placed = this.placed.get(leg)
    if (!placed) {
      const pad = block + 8
      const reversed = this.space.take(leg.reversed.length + 2 * pad) + pad
      this.space.data.set(leg.reversed, reversed)
      placed = {
        reversed,
        late: this.space.copied(leg.late),
        lateAt: this.space.copiedWhole(leg.lateAt),
        peak: Math.max(extent(leg.reversed, 0, leg.reversed.length).most, extent(leg.late, 0, leg.late.length).most),
      }
      this.placed.set(leg, placed)
    }
    return placed
  }
}

function extent(numbers: Float64Array, start: number, count: number): { most: number; sum: number } {
  let most = 0
  let sum = 0
  for (let i = start; i < start + count; i++) {
    const number = numbers[i] as number
    sum += number
    if (number > most) most = number
  }
  return { most, sum }
}

/** Blocks of time left from teleop's start down to 0, cut where a waiting robot's call comes. */
export function blocks(problem: Problem): { from: number; to: number }[] {
  const call = problem.rules.finishFrom
  const out: { from: number; to: number }[] = []
  for (let to = problem.steps; to >= 0; ) {
    let from = Math.max(0, to - block + 1)
    if (call >= from && call < to) from = call + 1
    out.push({ from, to })
    to = from - 1
  }
  return out
}

const clips = new WeakMap<Rooms, Clip>()

/** Clipping of rooms, prepared for runs of times. */
export class Clip {
  /** Least time left from which on room r needs no clipping. */
  readonly clearFrom: Int32Array
  private readonly stretches: Int32Array[] = []
  private readonly problem: Problem

  private constructor(problem: Problem) {
    this.problem = problem
    const { rooms, steps } = problem
    // More time left never makes less room count.
    const countsFrom = rooms.high.map((high, d) =>
      Int32Array.from({ length: (rooms.most[d] as number) + 1 }, (_, room) => {
        const t = high.findIndex((most) => most >= room)
        return t < 0 ? steps : t
      }),
    )
    this.clearFrom = Int32Array.from({ length: rooms.size }, (_, r) =>
      countsFrom.reduce((latest, times, d) => Math.max(latest, times[rooms.room(r, d)] as number), 0),
    )
  }

  /** Kept with the rooms, which many problems share. */
  static of(problem: Problem): Clip {
    const known = clips.get(problem.rooms) ?? new Clip(problem)
    clips.set(problem.rooms, known)
    return known
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

/** A stretch of one row over time left, and the actions that go with it. */
export interface Row {
  /** Place in the workspace of time 0. */
  readonly at: number
  readonly actions: Int16Array
  /** Index of the action at time 0. */
  readonly policyAt: number
}

/** The first time from `from` to `to` at which the mass of a row is not negligible; to + 1 where there is none. */
export function runFrom(mass: Float64Array, { at }: Row, from: number, to: number, negligible: number): number {
  let t = from
  while (t <= to && (mass[at + t] as number) < negligible) t++
  return t
}

/** The end of the run that begins there: of times with the same action and mass that is not negligible. */
export function runEnd(mass: Float64Array, row: Row, from: number, to: number, negligible: number): number {
  const { at, actions, policyAt } = row
  const action = actions[policyAt + from]
  let t = from + 1
  while (t <= to && (mass[at + t] as number) >= negligible && actions[policyAt + t] === action) t++
  return t
}
