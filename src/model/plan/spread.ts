import { binomial } from './binomial.ts'
import type { GraphLeg, GraphNode } from './graph.ts'
import type { Problem } from './problem.ts'
import { type Arrival, Arrivals, atOnce, blockOf, blocks, Clip, runsOf } from './run.ts'
import { stop, type Table, wait } from './table.ts'
import type { Tally } from './tally.ts'
import { cumulative } from './timed.ts'
import { Vectors } from './vectors.ts'

/** Probability below this, in one state at one time with one amount, is not followed further. */
const negligible = 1e-10

/** Distribution of a tally: [amount, probability], rising, in the tally's own unit (points or pieces). */
export type Spread = [number, number][]

/**
 * The exact distribution of a tally under a policy, on the tally's fine lattice. For every node, room and amount so
 * far, the probability of a decision there is a function of time left; blocks of times are carried through the legs
 * at once, as in the backward pass.
 */
export function spreadOf(problem: Problem, policy: Table, tally: Tally): Float64Array {
  return new SpreadPass(problem, policy, tally).run()
}

/** A vector over the fine lattice as [amount, probability], what is negligible left out. */
export function listed(mass: Float64Array, unit: number, least = 5e-10): Spread {
  const out: Spread = []
  for (let i = 0; i < mass.length; i++)
    if ((mass[i] as number) > least) out.push([Math.round(i * unit * 1e9) / 1e9, mass[i] as number])
  const total = out.reduce((sum, [, p]) => sum + p, 0)
  return out.map(([amount, p]) => [amount, p / total])
}

/** The decisions of one kind of lattice at one node: a vector over time left per room and amount. */
class Rows {
  readonly vectors: Vectors
  /** Slot by room · amounts + amount. */
  private readonly index = new Map<number, number>()
  readonly amounts: number
  active: number[] = []

  constructor(vectors: Vectors, amounts: number) {
    this.vectors = vectors
    this.amounts = amounts
  }

  slot(r: number, amount: number): number {
    const key = r * this.amounts + Math.min(amount, this.amounts - 1)
    let found = this.index.get(key)
    if (found === undefined) {
      found = this.vectors.take(key)
      this.index.set(key, found)
      this.active.push(found)
    }
    return found
  }

  /** Give back the vectors that have nothing left below time `from`. */
  retire(from: number): void {
    this.active = this.active.filter((slot) => {
      if ((this.vectors.low[slot] as number) < from) return true
      this.index.delete(this.vectors.tag[slot] as number)
      this.vectors.give(slot)
      return false
    })
  }
}

class SpreadPass {
  private readonly problem: Problem
  private readonly policy: Table
  private readonly tally: Tally
  private readonly borrowed: Vectors[]
  private readonly coarse: Rows[]
  private readonly fine: Rows[]
  private readonly final: Float64Array
  private readonly arrivals: Arrivals
  private readonly clip: Clip
  private readonly reached = new Map<number, Float64Array[]>()

  constructor(problem: Problem, policy: Table, tally: Tally) {
    this.problem = problem
    this.policy = policy
    this.tally = tally
    const { graph, steps } = problem
    const amounts = Math.ceil(tally.most + 1e-6) + 2
    const long = Vectors.borrowed(steps + 1)
    const short = Vectors.borrowed(Math.max(1, tally.fineBelow))
    this.borrowed = [long, short]
    this.coarse = graph.nodes.map(() => new Rows(long, amounts))
    this.fine = graph.nodes.map(() => new Rows(short, amounts * tally.lattice.ratio))
    this.final = new Float64Array(amounts * tally.lattice.ratio)
    this.arrivals = new Arrivals(problem, blockOf(problem))
    this.clip = new Clip(problem)
  }

  run(): Float64Array {
    const { graph, rooms, steps, autonomous } = this.problem
    for (const outcome of autonomous.outcomes) {
      const one = atOnce(outcome.probability, steps)
      this.arrive(graph.initial, rooms.index(outcome.room), one, 1, true, () => this.tally.initial(outcome))
    }
    for (const { from, to } of blocks(this.problem))
      for (const [n, node] of graph.nodes.entries()) {
        this.rows(this.coarse[n] as Rows, n, node, 1, from, to)
        if (from < this.tally.fineBelow) this.rows(this.fine[n] as Rows, n, node, this.tally.lattice.ratio, from, to)
      }
    for (const vectors of this.borrowed) vectors.giveBack()
    const total = this.final.reduce((sum, p) => sum + p, 0)
    return this.final.map((p) => p / total)
  }

  private rows(rows: Rows, n: number, node: GraphNode, ratio: number, from: number, to: number): void {
    const { vectors, amounts } = rows
    const actions = this.policy.actions[n] as Int16Array
    for (const slot of rows.active) {
      const low = Math.max(from, vectors.low[slot] as number)
      const high = Math.min(to, vectors.high[slot] as number)
      if (low > high) continue
      const key = vectors.tag[slot] as number
      const r = Math.floor(key / amounts)
      const amount = (key % amounts) / ratio
      const start = slot * vectors.length
      runsOf(
        vectors.data,
        start,
        low,
        high,
        actions,
        r * this.policy.row + this.policy.pad,
        negligible,
        (at, count, action) => {
          if (action === stop || at + count === 1) this.end(sum(vectors.data, start + at, count), amount)
          else if (action === wait) this.wait(n, r, amount, sum(vectors.data, start + at, count))
          else this.leg(node.legs[action] as GraphLeg, r, amount, vectors.data, start + at, at, count)
        },
      )
    }
    rows.retire(from)
  }

  /** The match ends with `amount` (coarse units, real): shared between the neighbouring points of the fine lattice. */
  private end(chance: number, amount: number): void {
    if (chance <= 0) return
    const place = amount * this.tally.lattice.ratio
    const whole = Math.min(Math.floor(place + 1e-6), this.final.length - 1)
    const share = Math.max(0, place - whole)
    if (share < 1e-6 || whole + 1 >= this.final.length) this.final[whole] = (this.final[whole] as number) + chance
    else {
      this.final[whole] = (this.final[whole] as number) + chance * (1 - share)
      this.final[whole + 1] = (this.final[whole + 1] as number) + chance * share
    }
  }

  private wait(n: number, r: number, amount: number, chance: number): void {
    const one = atOnce(chance, this.problem.rules.finishFrom)
    this.arrive(n, r, one, 1, true, () => amount)
  }

  private leg(
    leg: GraphLeg,
    r: number,
    amount: number,
    mass: Float64Array,
    start: number,
    at: number,
    count: number,
  ): void {
    const { problem, tally } = this
    if (leg.to < 0) {
      const done = weighted(mass, start, at, count, problem.reached[leg.id] as Float64Array)
      this.end(done * leg.success, amount + tally.finished(leg.points))
      this.end(done * (1 - leg.success), amount + tally.finished(leg.otherwise))
      this.end(sum(mass, start, count) - done, amount)
      return
    }
    const d = leg.goal < 0 ? -1 : (problem.rooms.dimensionOf[leg.goal] as number)
    const room = d < 0 ? leg.load : problem.rooms.room(r, d)
    const stride = d < 0 ? 0 : (problem.rooms.strides[d] as number)
    const successes = leg.goal < 0 ? null : (problem.successes[leg.id] as Float64Array)
    this.unfinished(leg, room, amount, mass, start, at, count)
    const arrival = this.arrivals.of(mass, start, at, count, problem.timed[leg.id] as Problem['timed'][number])
    if (!arrival) return
    if (!successes) {
      this.arrive(leg.to, r, arrival, 1, true, () => amount)
      return
    }
    for (let b = 0; b <= leg.load; b++) {
      const placed = Math.min(b, room)
      const chance = successes[b] as number
      if (chance > 0)
        this.arrive(leg.to, r - placed * stride, arrival, chance, placed === 0 || tally.steady(leg), (t) =>
          placed === 0 ? amount : amount + tally.placed(leg, placed, t),
        )
    }
  }

  /**
   * Mass arrives at a node in room r (to be clipped), with an amount that may depend on the time left where `steady` is
   * false. Stretches of one room and one amount are added at once.
   */
  private arrive(
    n: number,
    r: number,
    arrival: Arrival,
    chance: number,
    steady: boolean,
    amountAt: (t: number) => number,
  ): void {
    const { mass, at, first, count, lateCount } = arrival
    const { fineBelow } = this.tally
    for (let i = 0; i < count; ) {
      const t = first + i
      const short = t < fineBelow
      const single = short && !steady
      const until = single
        ? t + 1
        : this.clip.sameUntil(r, t, short ? Math.min(first + count, fineBelow) : first + count)
      if (!single || chance * (mass[at + i] as number) >= negligible)
        this.add(n, r, t, amountAt(t), chance, mass, at + i, until - t)
      i = until - first
    }
    if (lateCount > 0) this.arriveLate(n, r, arrival, chance, amountAt)
  }

  /** The far tail's points, most of which fall where neither the room is clipped nor the amount depends on time. */
  private arriveLate(n: number, r: number, arrival: Arrival, chance: number, amountAt: (t: number) => number): void {
    const { lateAt, lateMass, lateCount } = arrival
    const least = negligible / chance
    const clear = Math.max(this.tally.fineBelow, this.clip.clearFrom[r] as number)
    let late = 0
    while (late < lateCount && (lateAt[late] as number) >= clear) late++
    if (late > 0) this.addPoints(n, r, arrival, late, chance, amountAt(clear))
    for (let k = late; k < lateCount; k++)
      if ((lateMass[k] as number) >= least) {
        const t = lateAt[k] as number
        this.add(n, r, t, amountAt(t), chance, lateMass, k, 1)
      }
  }

  /** Adds the first `points` of a far tail, all of one room and amount. */
  private addPoints(n: number, r: number, arrival: Arrival, points: number, chance: number, amount: number): void {
    const rows = this.coarse[n] as Rows
    const whole = Math.floor(amount + 1e-6)
    const share = amount - whole < 1e-6 ? 0 : amount - whole
    addSparse(rows, r, whole, chance * (1 - share), arrival, points)
    if (share > 0) addSparse(rows, r, whole + 1, chance * share, arrival, points)
  }

  /** Adds `count` masses from time `t` on to a node's rows, an amount between two points of the lattice to both. */
  private add(
    n: number,
    r: number,
    t: number,
    amount: number,
    chance: number,
    mass: Float64Array,
    at: number,
    count: number,
  ): void {
    const short = t < this.tally.fineBelow
    const rows = (short ? this.fine[n] : this.coarse[n]) as Rows
    const place = short ? amount * this.tally.lattice.ratio : amount
    const whole = Math.floor(place + 1e-6)
    const share = place - whole < 1e-6 ? 0 : place - whole
    const room = this.clip.at(r, t)
    addStretch(rows, room, whole, t, chance * (1 - share), mass, at, count)
    if (share > 0) addStretch(rows, room, whole + 1, t, chance * share, mass, at, count)
  }

  /** A leg that the buzzer cuts: the pieces that counted before it stay. */
  private unfinished(
    leg: GraphLeg,
    room: number,
    amount: number,
    mass: Float64Array,
    start: number,
    at: number,
    count: number,
  ): void {
    const byPiece = this.pieceTimes(leg)
    const last = byPiece.at(-1) as Float64Array
    if (1 - (last[at] as number) < negligible) return
    for (let t = at; t < at + count; t++) {
      const m = mass[start + t - at] as number
      if (m * (1 - (last[t] as number)) < negligible) continue
      for (let k = 0; k < byPiece.length; k++) {
        const chance = m * ((k === 0 ? 1 : (byPiece[k - 1]?.[t] as number)) - (byPiece[k]?.[t] as number))
        if (chance < negligible) continue
        if (k === 0) this.end(chance, amount)
        else this.partly(leg, k, room, amount, chance, t)
      }
    }
  }

  /** k pieces of a load counted before the buzzer, the others did not. */
  private partly(leg: GraphLeg, k: number, room: number, amount: number, chance: number, t: number): void {
    const successes = binomial(k, leg.success)
    const { pieces } = this.problem.timed[leg.id] as Problem['timed'][number]
    // Only a held piece asks when it was placed; its expected time stands for it.
    const timesOf = pieces[Math.floor((k - 1) / 2)] as (typeof pieces)[number]
    const left = Math.max(0, Math.round(t - timesOf.first - timesOf.mass.length / 2))
    for (let b = 0; b <= k; b++)
      this.end(chance * (successes[b] as number), amount + this.tally.placed(leg, Math.min(b, room), left))
  }

  private pieceTimes(leg: GraphLeg): Float64Array[] {
    let times = this.reached.get(leg.id)
    if (!times) {
      const timed = this.problem.timed[leg.id] as Problem['timed'][number]
      times = timed.pieces.map((piece) => cumulative(piece, this.problem.steps))
      this.reached.set(leg.id, times)
    }
    return times
  }
}

/** Adds masses for times from `t` on, scaled by `chance`, to one row; what is negligible at both ends is left out. */
function addStretch(
  rows: Rows,
  r: number,
  amount: number,
  t: number,
  chance: number,
  mass: Float64Array,
  at: number,
  count: number,
): void {
  const least = negligible / chance
  let low = 0
  let high = count - 1
  while (low <= high && (mass[at + low] as number) < least) low++
  while (high >= low && (mass[at + high] as number) < least) high--
  if (low > high) return
  const slot = rows.slot(r, amount)
  const { data, length } = rows.vectors
  const target = slot * length + t
  for (let i = low; i <= high; i++) data[target + i] = (data[target + i] as number) + chance * (mass[at + i] as number)
  rows.vectors.widen(slot, t + low, t + high)
}

/** The same for the first `points` of a far tail; time left falls from one to the next but for a step at most. */
function addSparse(rows: Rows, r: number, amount: number, chance: number, arrival: Arrival, points: number): void {
  const { lateAt, lateMass } = arrival
  const least = negligible / chance
  let slot = -1
  let data = rows.vectors.data
  let start = 0
  let low = 0
  let high = 0
  for (let k = 0; k < points; k++) {
    const m = lateMass[k] as number
    if (m < least) continue
    const t = lateAt[k] as number
    if (slot < 0) {
      slot = rows.slot(r, amount)
      data = rows.vectors.data
      start = slot * rows.vectors.length
      low = t
      high = t
    }
    if (t < low) low = t
    if (t > high) high = t
    data[start + t] = (data[start + t] as number) + chance * m
  }
  if (slot >= 0) rows.vectors.widen(slot, low, high)
}

function sum(mass: Float64Array, start: number, count: number): number {
  let total = 0
  for (let i = 0; i < count; i++) total += mass[start + i] as number
  return total
}

function weighted(mass: Float64Array, start: number, at: number, count: number, weights: Float64Array): number {
  let total = 0
  for (let i = 0; i < count; i++) total += (mass[start + i] as number) * (weights[at + i] as number)
  return total
}
