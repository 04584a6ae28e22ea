import type { Goal, Option } from '../documents/types.ts'
import { Workspace } from '../kernel/index.ts'
import type { LegBuilder, LegTimes } from '../leg/builder.ts'
import { notAtOnce, type Pmf } from '../leg/pmf.ts'
import { roomLeft } from './binomial.ts'
import type { GraphLeg, PlanGraph } from './graph.ts'

/**
 * A leg on the plan's grid: `chance[i]` is the probability that it takes `shortest + i` steps, as far as that is worth
 * keeping step by step; `late[k]` the probability of `lateAt[k]` steps, further out, where few points do.
 */
export interface TimedLeg {
  readonly leg: GraphLeg
  readonly shortest: number
  readonly chance: Float64Array
  /** The same, last first: convolutions then run forward through memory. */
  readonly reversed: Float64Array
  readonly lateAt: Int32Array
  readonly late: Float64Array
  /** The whole distribution. */
  readonly end: Pmf
  /** pieces[i]: when piece i + 1 counts; one entry where all count at the end. */
  readonly pieces: readonly Pmf[]
  /** Time between a piece and the 1st, 2nd, … after it; none where all count at the end. */
  between(): readonly Pmf[]
  /** reached(steps)[t]: chance that it takes t steps at most, t = 0 … steps. */
  reached(steps: number): Float64Array
}

type Chances = Omit<TimedLeg, 'leg' | 'reached'>

/** Fine points per step of the plan's grid, unless a planner is told otherwise. */
export const finePerStep = 10

/** A chance of finding room that adds nothing. */
const nothing = 1e-15

/** Legs shorter than this (steps) are kept step by step. */
const short = 64

/**
 * Spacing of the points (steps) where less than `beyond` of a leg's mass is still to come. Sharing between neighbours
 * keeps the mean; what is added is a variance below beyond · (spacing · step)² / 6, under 3e-3 s² in all where a step is
 * 0.1 s: less than 1e-4 points of the plans that this was tried on.
 */
const spacings = [
  { beyond: 5e-2, spacing: 4 },
  { beyond: 1e-2, spacing: 8 },
  { beyond: 1e-3, spacing: 16 },
  { beyond: 1e-5, spacing: 40 },
]
const coarsest = 40
const asItIs = { beyond: Number.POSITIVE_INFINITY, spacing: 1 }

/** Mass per point of an end-to-end grid, the far tail gathered on spaced points. */
function split(end: Pmf): Pick<TimedLeg, 'chance' | 'reversed' | 'lateAt' | 'late'> {
  let core = end.mass.length
  let tail = 0
  while (core > short && tail + (end.mass[core - 1] as number) < (spacings[0]?.beyond as number))
    tail += end.mass[--core] as number
  const chance = end.mass.subarray(0, core)
  const reversed = new Float64Array(core)
  for (let i = 0; i < core; i++) reversed[core - 1 - i] = chance[i] as number
  return { chance, reversed, ...gathered(end, core) }
}

/** All zero between two calls. */
let scratch = new Float64Array(0)

/** The tail from index `core` on, on points that lie the further apart the less is still to come. */
function gathered(end: Pmf, core: number): Pick<TimedLeg, 'lateAt' | 'late'> {
  const last = end.mass.length - 1
  const length = end.mass.length - core + coarsest
  if (scratch.length < length) scratch = new Float64Array(2 * length)
  const tail = scratch
  let rest = 0
  let level = spacings.length
  let { beyond, spacing } = spacings[level - 1] as (typeof spacings)[number]
  let share = 1 / spacing
  let off = (last - core) % spacing
  for (let i = last; i >= core; i--) {
    const m = end.mass[i] as number
    rest += m
    if (rest >= beyond) {
      while (level > 0 && rest >= (spacings[level - 1] as (typeof spacings)[number]).beyond) level--
      ;({ beyond, spacing } = spacings[level - 1] ?? asItIs)
      share = 1 / spacing
      off = (i - core) % spacing
    }
    if (m > 0) {
      const low = i - core - off
      const up = m * off * share
      tail[low] = (tail[low] as number) + (m - up)
      if (off > 0) tail[low + spacing] = (tail[low + spacing] as number) + up
    }
    off = off === 0 ? spacing - 1 : off - 1
  }
  let points = 0
  for (let i = 0; i < length; i++) if ((tail[i] as number) > 0) points++
  const late = new Float64Array(points)
  const lateAt = new Int32Array(points)
  for (let i = length - 1; points > 0; i--) {
    const mass = tail[i] as number
    if (!(mass > 0)) continue
    lateAt[--points] = end.first + core + i
    late[points] = mass
  }
  tail.fill(0, 0, length)
  return { lateAt, late }
}

const known = new WeakMap<LegTimes, Map<number, Chances>>()

/** All legs of a graph on the plan's grid, every time multiplied by `form`. */
export function timedLegsOf(graph: PlanGraph, builder: LegBuilder, form: number): TimedLeg[] {
  return graph.legs.map((leg) => timedLeg(leg, builder, form))
}

/** One leg on the plan's grid, with other times if asked for: as when one of its stages is moved. */
export const timedLeg = (
  leg: GraphLeg,
  builder: LegBuilder,
  form: number,
  times = builder.times(leg.spec, leg.key),
): TimedLeg => new LazyLeg(leg, { times, form, perStep: builder.perStep })

/** Put on the grid when first asked for: at most forms most legs are never begun. */
class LazyLeg implements TimedLeg {
  readonly leg: GraphLeg
  private readonly from: { times: LegTimes; form: number; perStep: number }
  private found: Chances | null = null
  private byEnd: Float64Array | null = null

  constructor(leg: GraphLeg, from: LazyLeg['from']) {
    this.leg = leg
    this.from = from
  }

  private get all(): Chances {
    this.found ??= this.find()
    return this.found
  }

  private find(): Chances {
    const { times, form, perStep } = this.from
    const byForm = known.get(times) ?? new Map<number, Chances>()
    known.set(times, byForm)
    const found = byForm.get(form) ?? timesOnGrid(times, form, perStep)
    byForm.set(form, found)
    return found
  }

  get shortest() {
    return this.all.shortest
  }

  get chance() {
    return this.all.chance
  }

  get reversed() {
    return this.all.reversed
  }

  get lateAt() {
    return this.all.lateAt
  }

  get late() {
    return this.all.late
  }

  get end() {
    return this.all.end
  }

  get pieces() {
    return this.all.pieces
  }

  between() {
    return this.all.between()
  }

  reached(steps: number): Float64Array {
    if (this.byEnd?.length !== steps + 1) this.byEnd = cumulative(this.end, steps)
    return this.byEnd
  }
}

function timesOnGrid(times: LegTimes, form: number, perStep: number): Chances {
  const end = notAtOnce(times.end.onGrid(perStep, form))
  return {
    shortest: end.first,
    ...split(end),
    end,
    pieces: times.pieces?.map((piece) => notAtOnce(piece.onGrid(perStep, form))) ?? [end],
    between: () => times.between?.map((time) => time.onGrid(perStep, form)) ?? [],
  }
}

/** What one piece pays when it counts with t' seconds left: all of it, or per second of what is left up to h. */
export interface Pay {
  readonly points: number
  /** Null for a piece that pays at once. */
  readonly hold: { readonly perSecond: number; readonly seconds: number } | null
}

export function payOf(goal: Goal, option: Option): Pay {
  if (goal.award.kind === 'each') return { points: goal.award.teleop, hold: null }
  const seconds = option.holdSeconds[goal.id] ?? 0
  return { points: goal.award.teleopPerSecond * seconds, hold: { perSecond: goal.award.teleopPerSecond, seconds } }
}

/** P(c <= t) for t = 0 … steps. */
export function cumulative(times: Pmf, steps: number): Float64Array {
  const out = new Float64Array(steps + 1)
  const last = times.first + times.mass.length - 1
  let sum = 0
  for (let t = times.first; t < last && t <= steps; t++) out[t] = sum += times.mass[t - times.first] as number
  return out.fill(1, Math.max(0, last))
}

/** Expected pay of a piece that counts after the given time, by time left: Σ_{c <= t} f(c) · pay(t − c). */
function payBy(times: Pmf, pay: Pay, steps: number, step: number): Float64Array {
  const reached = cumulative(times, steps)
  if (!pay.hold) {
    for (let t = 0; t <= steps; t++) reached[t] = (reached[t] as number) * pay.points
    return reached
  }
  // pay(t') = rate · (t' − max(0, t' − h)), so the sum is a difference of two integrals of the cdf.
  const area = new Float64Array(steps + 1)
  for (let t = 1; t <= steps; t++) area[t] = (area[t - 1] as number) + step * (reached[t - 1] as number)
  const held = pay.hold.seconds / step
  const out = new Float64Array(steps + 1)
  for (let t = 0; t <= steps; t++) {
    const place = t - held
    const whole = Math.floor(place)
    const before =
      place <= 0
        ? 0
        : (area[whole] as number) +
          (place - whole) * ((area[Math.min(steps, whole + 1)] as number) - (area[whole] as number))
    out[t] = pay.hold.perSecond * ((area[t] as number) - before)
  }
  return out
}

/**
 * Expected points and pieces of a score leg by time left and room: `points[room]`, `pieces()[room]` for room up to the
 * load (more room changes nothing) or to what there is; index 0 is the leg without room, unused. Made when first asked for.
 */
export interface LegPay {
  readonly points: readonly Float64Array[]
  pieces(): readonly Float64Array[]
}

/** @param mostRoom the most room that there is on its goal; null without a limit */
export const legPay = (timed: TimedLeg, pay: Pay, mostRoom: number | null, steps: number, step: number): LegPay =>
  new LazyPay(timed, { pay, mostRoom, steps, step })

class LazyPay implements LegPay {
  private readonly timed: TimedLeg
  private readonly by: { pay: Pay; mostRoom: number | null; steps: number; step: number }
  private paid: readonly Float64Array[] | null = null
  private placed: readonly Float64Array[] | null = null

  constructor(timed: TimedLeg, by: LazyPay['by']) {
    this.timed = timed
    this.by = by
  }

  get points() {
    this.paid ??= this.byRoom((times) => payBy(times, this.by.pay, this.by.steps, this.by.step))
    return this.paid
  }

  pieces() {
    this.placed ??= this.byRoom((times) => cumulative(times, this.by.steps))
    return this.placed
  }

  private byRoom(tableOf: (times: Pmf) => Float64Array): readonly Float64Array[] {
    const { load } = this.timed.leg
    const { mostRoom } = this.by
    const space = Workspace.borrowed()
    const tables = this.timed.pieces.map((times) => space.copied(tableOf(times)))
    const made =
      mostRoom === null
        ? Array(load + 1).fill(this.inRoom(tables, load, space))
        : Array.from({ length: Math.min(load, mostRoom) + 1 }, (_, room) => this.inRoom(tables, room, space))
    space.giveBack()
    return made
  }

  private inRoom(tables: readonly number[], room: number, space: Workspace): Float64Array {
    const { load, success } = this.timed.leg
    const count = this.by.steps + 1
    const out = space.take(count)
    for (let i = 0; i < load; i++) {
      const weight = success * roomLeft(i, success, room)
      if (weight > nothing) space.kernel.addScaled(out, tables[Math.min(i, tables.length - 1)] as number, count, weight)
    }
    return space.data.slice(out, out + count)
  }
}
