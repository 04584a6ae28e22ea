import { Workspace } from '../kernel/index.ts'
import { group } from './ahead.ts'
import { Finishes, tie } from './finishes.ts'
import type { Floor } from './floor.ts'
import type { GraphNode } from './graph.ts'
import type { Problem, Rules } from './problem.ts'
import type { Rooms } from './rooms.ts'
import { type Policy, startValue, stop, type Table, type TablePlaces, tableIn, wait } from './table.ts'
import { type Work, Works } from './works.ts'

/** An action is left out where it is worse by more than this (points), far above the rounding of its bound. */
const clearly = 1e-9

/**
 * The exact values and best actions of a plan, by backward induction over time left.
 *
 * No leg takes less than `block` steps, so the values of a whole block of times depend on earlier blocks only: each
 * leg's convolution is computed for many times at once, eight together, which is what makes this fast.
 *
 * Where no call forbids anything, more time left is never worth less. So an action that is worse at the end of a stretch of
 * times than the leading action at its beginning is worse in all of it, and need not be computed there.
 */
export function solve(problem: Problem): Table {
  return passOver(problem, { rules: problem.rules }, (pass) => pass.table())
}

/** The best actions alone, and what they are worth at teleop's start: for the many plans of a call or a stage's worth. */
export function bestPolicy(
  problem: Problem,
  rules: Rules,
  floor: Floor | null = null,
): { policy: Policy; value: number } {
  return passOver(problem, { rules, floor }, (pass) => ({ policy: pass.policy(), value: pass.start() }))
}

/** Values of a given policy under the problem's leg times: what the plan of form 1 earns when every time is stretched. */
export function evaluatePolicy(problem: Problem, policy: Policy): Table {
  return passOver(problem, { rules: problem.rules, given: policy }, (pass) => pass.table())
}

interface Terms {
  readonly rules: Rules
  /** Where the actions are given, only their values are found. */
  readonly given?: Policy | null
  readonly floor?: Floor | null
}

function passOver<T>(problem: Problem, terms: Terms, result: (pass: BackwardPass) => T): T {
  const space = Workspace.borrowed()
  const pass = new BackwardPass(problem, space, terms)
  for (let t = 0; t <= problem.steps; t += pass.block) pass.run(t, Math.min(problem.steps, t + pass.block - 1))
  const found = result(pass)
  space.giveBack()
  return found
}

class BackwardPass {
  readonly block: number
  private readonly problem: Problem
  private readonly places: TablePlaces
  /** All numbers that the inner loops work on. */
  private readonly data: Float64Array
  private readonly values: Float64Array[]
  private readonly actions: Int16Array[]
  private readonly rules: Rules
  private readonly given: Policy | null
  private readonly floor: Floor | null
  private readonly rooms: Rooms
  private readonly works: Works
  /** Whether more time left is never worth less. */
  private readonly rising: boolean
  private readonly best: Float64Array
  private readonly choice: Int16Array
  private readonly q: Float64Array
  private readonly finishes: Finishes
  /** Per action of the node in hand: the groups of times in which it is computed, bit by bit. */
  private readonly wanted: Int32Array
  /** Value of each node when the call comes; room does not matter then. */
  private readonly atCall: Float64Array

  constructor(problem: Problem, space: Workspace, { rules, given = null, floor = null }: Terms) {
    this.given = given
    this.floor = floor
    this.problem = problem
    this.rules = rules
    const { rooms } = problem
    this.rooms = rooms
    const shortest = problem.timed.filter((leg) => leg.leg.to >= 0).map((leg) => leg.shortest)
    // Groups of a block are kept as the bits of one number.
    this.block = Math.min(64, problem.steps + 1, ...shortest)
    this.places = tableIn(space, problem)
    this.works = new Works(problem, this.places, this.block, space)
    this.data = space.data
    const size = rooms.size * this.places.row
    this.values = this.places.values.map((place) => space.data.subarray(place, place + size))
    this.actions = problem.graph.nodes.map(() => new Int16Array(size))
    this.rising = rules.workAbove < 0
    this.q = this.works.q
    this.best = new Float64Array(this.q.length)
    this.choice = new Int16Array(this.q.length)
    this.finishes = new Finishes(problem, rules, this.q.length)
    this.wanted = new Int32Array(Math.max(0, ...problem.graph.nodes.map((node) => node.legs.length)))
    this.atCall = new Float64Array(problem.graph.nodes.length)
  }

  run(from: number, to: number): void {
    const rooms = this.roomsWithin(from, to)
    this.works.begin(from)
    for (const [n, node] of this.problem.graph.nodes.entries()) {
      if (!this.given) this.finishes.find(node, from, to - from + 1)
      for (const r of rooms.all) this.decide(n, node, r, from, to)
    }
    this.fill(from, to, rooms)
  }

  policy(): Policy {
    const { pad, row } = this.places
    return { pad, row, actions: this.actions }
  }

  /** Policy and values, in memory of their own. */
  table(): Table {
    return { ...this.policy(), values: this.values.map((values) => values.slice()) }
  }

  start(): number {
    return startValue(this.problem, { ...this.policy(), values: this.values })
  }

  /** The rooms that matter within a block, and the clip of the others. */
  private roomsWithin(from: number, to: number) {
    const { goals, most, size, room } = this.rooms
    const high = goals.map((_, d) => this.rooms.high[d]?.[to] as number)
    const low = goals.map((_, d) => Math.min(this.rooms.low[d]?.[from] as number, high[d] as number))
    const least = low.map((room, d) => Math.max(room, Math.min(high[d] as number, this.lowest(d, from, to))))
    const all: number[] = []
    for (let r = 0; r < size; r++)
      if (most.every((_, d) => room(r, d) <= (high[d] as number) && room(r, d) >= (least[d] as number))) all.push(r)
    return { all, high, low, least }
  }

  private lowest(d: number, from: number, to: number): number {
    const floor = this.floor?.[d]
    return floor ? Math.min(...floor.subarray(from, to + 1)) : 0
  }

  private decide(n: number, node: GraphNode, r: number, from: number, to: number): void {
    const { best, choice, rules } = this
    const count = to - from + 1
    best.fill(0, 0, count)
    choice.fill(stop, 0, count)
    const workFrom = Math.max(0, rules.workAbove + 1 - from)
    if (workFrom < count) this.takeBest(n, r, from, workFrom, count)
    if (this.given) this.finishAsTold(n, node, r, from, count)
    else this.finishes.takeWhereBetter(best, choice, count)
    this.keep(n, r, from, count)
  }

  private keep(n: number, r: number, from: number, count: number): void {
    const { best, choice, rules, places } = this
    const offset = r * places.row + places.pad + from
    const values = this.values[n] as Float64Array
    const actions = this.actions[n] as Int16Array
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

  private finishAsTold(n: number, node: GraphNode, r: number, from: number, count: number): void {
    for (const [action, leg] of node.legs.entries()) {
      if (leg.to >= 0) continue
      const end = this.finishes.valuesOf(leg, from, count, this.q)
      this.take(n, r, action, from, 0, end)
    }
  }

  /** The best collect or score leg of each time from `start` on. */
  private takeBest(n: number, r: number, from: number, start: number, count: number): void {
    const works = this.works.of[n] as Work[]
    this.select(n, r, from, start, count)
    for (let w = 0; w < works.length; w++) {
      const work = works[w] as Work
      const wanted = this.wanted[work.action] as number
      if (wanted === 0 || !this.works.open(work, r)) continue
      const first = 31 - Math.clz32(wanted & -wanted)
      const last = 31 - Math.clz32(wanted)
      this.works.find(work, r, from, first, last)
      this.take(n, r, work.action, from, Math.max(start, first * group), Math.min(count, (last + 1) * group))
    }
  }

  /** Finds the groups of times in which each collect or score leg must be computed. */
  private select(n: number, r: number, from: number, start: number, count: number): void {
    const { wanted, given } = this
    const first = Math.floor(start / group)
    const last = Math.floor((count - 1) / group)
    const all = (2 << last) - (1 << first)
    if (given) {
      wanted.fill(0)
      const actions = given.actions[n] as Int16Array
      const place = r * given.row + given.pad + from
      for (let j = start; j < count; j++) {
        const action = actions[place + j] as number
        if (action >= 0) wanted[action] = (wanted[action] as number) | (1 << Math.floor(j / group))
      }
      return
    }
    if (!this.rising) {
      wanted.fill(all)
      return
    }
    wanted.fill(0)
    const lead = this.leading(n, r, from, last)
    if (lead < 0) return
    const works = this.works.of[n] as Work[]
    this.works.find(works[lead] as Work, r, from, 0, last)
    // At least this much can be had in the whole stretch: by the leading action or by a finish.
    const least = Math.max(this.q[0] as number, this.finishes.worth[0] as number) - clearly
    for (let w = 0; w < works.length; w++) {
      const work = works[w] as Work
      if (w !== lead && (!this.works.open(work, r) || this.mostAt(work, r, from, count) < least)) continue
      wanted[work.action] = all
    }
  }

  /** What a leg is worth at the end of a block. */
  private mostAt(work: Work, r: number, from: number, count: number): number {
    const last = Math.floor((count - 1) / group)
    this.works.find(work, r, from, last, last)
    return this.q[count - 1] as number
  }

  /** The leg that was best just before the block, or else the one that is best at its end; −1 where none can be done. */
  private leading(n: number, r: number, from: number, last: number): number {
    const { row, pad } = this.places
    const works = this.works.of[n] as Work[]
    const before = from > 0 ? ((this.actions[n] as Int16Array)[r * row + pad + from - 1] as number) : stop
    let lead = -1
    let most = Number.NEGATIVE_INFINITY
    for (let w = 0; w < works.length; w++) {
      const work = works[w] as Work
      if (work.action === before && this.works.open(work, r)) return w
    }
    for (let w = 0; w < works.length; w++) {
      const work = works[w] as Work
      if (!this.works.open(work, r)) continue
      this.works.find(work, r, from, last, last)
      const value = this.q[last * group] as number
      if (value > most) {
        most = value
        lead = w
      }
    }
    return lead
  }

  private take(n: number, r: number, action: number, from: number, start: number, end: number): void {
    const { best, choice, given, q } = this
    if (given) {
      const actions = given.actions[n] as Int16Array
      const place = r * given.row + given.pad + from
      for (let j = start; j < end; j++)
        if (actions[place + j] === action) {
          best[j] = q[j] as number
          choice[j] = action
        }
    } else
      for (let j = start; j < end; j++)
        if ((q[j] as number) > (best[j] as number) + tie) {
          best[j] = q[j] as number
          choice[j] = action
        }
  }

  /**
   * More room than can be used is worth as much as what can, and below the floor the floor stands in: copied, so that no
   * reader has to clip. What can not be met is left empty.
   */
  private fill(from: number, to: number, within: { high: number[]; low: number[]; least: number[] }): void {
    const { rooms, places } = this
    const { high, low, least } = within
    for (let r = 0; r < rooms.size; r++) {
      if (low.some((room, d) => rooms.room(r, d) < room)) continue
      const clipped = rooms.index(high.map((top, d) => Math.max(least[d] as number, Math.min(rooms.room(r, d), top))))
      if (clipped === r) continue
      const target = r * places.row + places.pad + from
      const origin = clipped * places.row + places.pad + from
      for (const values of this.values) values.copyWithin(target, origin, origin + to - from + 1)
      for (const actions of this.actions) actions.copyWithin(target, origin, origin + to - from + 1)
    }
  }
}
