import type { GraphNode } from './graph.ts'
import type { Rules } from './problem.ts'
import { finishValue, type Problem } from './problem.ts'
import type { Rooms } from './rooms.ts'
import { emptyTable, fitting, stop, type Table, wait } from './table.ts'
import type { TimedLeg } from './timed.ts'

/** A later action replaces an earlier one, and any action stopping, only if better by more than this (points). */
const tie = 1e-12

/**
 * The exact values and best actions of a plan, by backward induction over time left.
 *
 * No leg takes less than `block` steps, so the values of a whole block of times depend on earlier blocks only: each
 * leg's convolution is computed for the block at once, four times together, which is what makes this fast.
 */
export function solve(problem: Problem, rules: Rules = problem.rules): Table {
  return passOver(problem, rules, null)
}

/** Values of a given policy under the problem's leg times: what the plan of form 1 earns when every time is stretched. */
export function evaluatePolicy(problem: Problem, policy: Table): Table {
  return passOver(problem, problem.rules, policy)
}

function passOver(problem: Problem, rules: Rules, policy: Table | null): Table {
  const table = emptyTable(problem)
  const pass = new BackwardPass(problem, table, rules, policy)
  for (let t = 0; t <= problem.steps; t += pass.block) pass.run(t, Math.min(problem.steps, t + pass.block - 1))
  return table
}

class BackwardPass {
  readonly block: number
  private readonly problem: Problem
  private readonly table: Table
  private readonly rules: Rules
  /** Where the actions are given, only their values are found. */
  private readonly policy: Table | null
  private readonly rooms: Rooms
  /** What follows each leg, by leg, room and time in the block. */
  private readonly following: Float64Array[]
  private readonly best: Float64Array
  private readonly choice: Int16Array
  private readonly q: Float64Array
  /** Value of each node when the call comes; room does not matter then. */
  private readonly atCall: Float64Array

  constructor(problem: Problem, table: Table, rules: Rules, policy: Table | null) {
    this.policy = policy
    this.problem = problem
    this.table = table
    this.rules = rules
    this.rooms = problem.rooms
    const shortest = problem.timed.filter((leg) => leg.leg.to >= 0).map((leg) => leg.shortest)
    this.block = Math.min(64, problem.steps + 1, ...shortest)
    const width = this.block + 4
    this.following = problem.timed.map((leg) => new Float64Array(leg.leg.to < 0 ? 0 : this.rooms.size * width))
    this.best = new Float64Array(width)
    this.choice = new Int16Array(width)
    this.q = new Float64Array(width)
    this.atCall = new Float64Array(problem.graph.nodes.length)
  }

  run(from: number, to: number): void {
    const rooms = this.roomsWithin(from, to)
    if (to > this.rules.workAbove)
      for (const leg of this.problem.timed) if (leg.leg.to >= 0) this.convolveBlock(leg.leg.id, from, to, rooms)
    for (const [n, node] of this.problem.graph.nodes.entries())
      for (const r of rooms.all) this.decide(n, node, r, from, to)
    this.fill(from, to, rooms.high)
  }

  /** The rooms that matter within a block, and the clip of the others. */
  private roomsWithin(from: number, to: number) {
    const { goals, most, size, room } = this.rooms
    const high = goals.map((_, d) => this.rooms.high[d]?.[to] as number)
    const low = goals.map((_, d) => Math.min(this.rooms.low[d]?.[from] as number, high[d] as number))
    const all: number[] = []
    for (let r = 0; r < size; r++)
      if (most.every((_, d) => room(r, d) <= (high[d] as number) && room(r, d) >= (low[d] as number))) all.push(r)
    return { all, high, low }
  }

  private convolveBlock(id: number, from: number, to: number, within: { all: number[]; low: number[] }): void {
    const timed = this.problem.timed[id] as (typeof this.problem.timed)[number]
    const values = this.table.values[timed.leg.to] as Float64Array
    const { row, pad } = this.table
    const count = fitting(timed.chance, timed.shortest, to)
    const cut = timed.chance.length - count
    const width = this.block + 4
    const out = this.following[id] as Float64Array
    for (const r of this.roomsAfter(timed.leg, within)) {
      if (count > 0) {
        const start = r * row + pad + from - timed.shortest - (count - 1)
        convolveRow(out, r * width, to - from + 1, timed.reversed, cut, values, start)
      } else out.fill(0, r * width, (r + 1) * width)
      addLate(out, r * width, from, to, timed, values, r * row + pad)
    }
  }

  /** A score leg's outcomes read the rooms below those of the block, too. */
  private roomsAfter(leg: { goal: number; load: number }, within: { all: number[]; low: number[] }): number[] {
    const d = leg.goal < 0 ? -1 : (this.rooms.dimensionOf[leg.goal] as number)
    if (d < 0) return within.all
    const stride = this.rooms.strides[d] as number
    const lowest = within.low[d] as number
    const below = within.all
      .filter((r) => this.rooms.room(r, d) === lowest)
      .flatMap((r) => Array.from({ length: Math.min(leg.load, lowest) }, (_, b) => r - (b + 1) * stride))
    return [...within.all, ...below]
  }

  private decide(n: number, node: GraphNode, r: number, from: number, to: number): void {
    const { best, choice, q, rules, problem, table } = this
    const count = to - from + 1
    best.fill(0, 0, count)
    choice.fill(stop, 0, count)
    const workFrom = Math.max(0, rules.workAbove + 1 - from)
    const finishTo = Math.min(count, rules.finishFrom - from + 1)
    for (const [a, leg] of node.legs.entries()) {
      if (leg.to < 0) {
        const reached = problem.reached[leg.id] as Float64Array
        const value = finishValue(leg)
        for (let j = 0; j < finishTo; j++) q[j] = value * (reached[from + j] as number)
        this.take(n, r, a, from, 0, finishTo)
      } else if (workFrom < count && this.work(leg, r, from, workFrom, count)) this.take(n, r, a, from, workFrom, count)
    }
    const offset = r * table.row + table.pad + from
    const values = table.values[n] as Float64Array
    const actions = table.actions[n] as Int16Array
    for (let j = 0; j < count; j++) {
      if (rules.waits && choice[j] === stop && from + j > rules.finishFrom) {
        // Nothing is worth doing before the call: the robot waits for it.
        values[offset + j] = this.atCall[n] as number
        actions[offset + j] = wait
      } else {
        values[offset + j] = best[j] as number
        actions[offset + j] = choice[j] as number
        if (from + j === rules.finishFrom) this.atCall[n] = best[j] as number
      }
    }
  }

  /** Q of a collect or score leg over the block into q; false where the goal has no room. */
  private work(
    leg: { id: number; goal: number; load: number },
    r: number,
    from: number,
    start: number,
    count: number,
  ): boolean {
    const { q, problem } = this
    const width = this.block + 4
    const following = this.following[leg.id] as Float64Array
    const here = r * width
    if (leg.goal < 0) {
      for (let j = start; j < count; j++) q[j] = following[here + j] as number
      return true
    }
    const d = this.rooms.dimensionOf[leg.goal] as number
    const pay = problem.legPays[leg.id]?.points as readonly Float64Array[]
    if (d < 0) {
      const own = pay[leg.load] as Float64Array
      for (let j = start; j < count; j++) q[j] = (own[from + j] as number) + (following[here + j] as number)
      return true
    }
    const room = this.rooms.room(r, d)
    if (room === 0) return false
    const own = pay[Math.min(room, leg.load)] as Float64Array
    for (let j = start; j < count; j++) q[j] = own[from + j] as number
    const successes = problem.successes[leg.id] as Float64Array
    const stride = (this.rooms.strides[d] as number) * width
    for (let b = 0; b <= leg.load; b++) {
      const p = successes[b] as number
      const place = here - Math.min(b, room) * stride
      if (p > 0) for (let j = start; j < count; j++) q[j] = (q[j] as number) + p * (following[place + j] as number)
    }
    return true
  }

  private take(n: number, r: number, action: number, from: number, start: number, end: number): void {
    const { best, choice, policy, q } = this
    if (!policy) {
      this.improve(action, start, end)
      return
    }
    const actions = policy.actions[n] as Int16Array
    const place = r * policy.row + policy.pad + from
    for (let j = start; j < end; j++)
      if (actions[place + j] === action) {
        best[j] = q[j] as number
        choice[j] = action
      }
  }

  private improve(action: number, start: number, end: number): void {
    const { best, choice, q } = this
    for (let j = start; j < end; j++)
      if ((q[j] as number) > (best[j] as number) + tie) {
        best[j] = q[j] as number
        choice[j] = action
      }
  }

  /** More room than can be used is worth as much as what can: copied, so that no reader has to clip. */
  private fill(from: number, to: number, high: readonly number[]): void {
    const { rooms, table } = this
    for (let r = 0; r < rooms.size; r++) {
      const clipped = rooms.index(high.map((top, d) => Math.min(rooms.room(r, d), top)))
      if (clipped === r) continue
      const target = r * table.row + table.pad + from
      const origin = clipped * table.row + table.pad + from
      for (const values of table.values) values.copyWithin(target, origin, origin + to - from + 1)
      for (const actions of table.actions) actions.copyWithin(target, origin, origin + to - from + 1)
    }
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
