import { Workspace } from '../kernel/index.ts'
import { group } from './ahead.ts'
import { Ceiling, type Within } from './ceiling.ts'
import { Finishes, tie } from './finishes.ts'
import type { Floor } from './floor.ts'
import type { Problem, Rules } from './problem.ts'
import { type Policy, startValue, stop, type Table, type TablePlaces, tableIn, wait } from './table.ts'
import { type Work, Works } from './works.ts'

/** An action is left out where it is worse by more than this (points), far above the rounding of its bound. */
const clearly = 1e-9

/** Times that are decided together, at most: their groups are kept as the bits of one number. */
const longest = 64

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

/** What the best actions are worth at teleop's start, without noting them: for the many plans of a belief, and for a call's first scan. */
export function bestValue(problem: Problem, rules: Rules = problem.rules): number {
  return passOver(problem, { rules, valueOnly: true }, (pass) => pass.start())
}

interface Terms {
  readonly rules: Rules
  readonly floor?: Floor | null
  /** Whether nobody asks for the actions. */
  readonly valueOnly?: boolean
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
  private readonly space: Workspace
  /** All numbers that the inner loops work on. */
  private readonly data: Float64Array
  private readonly values: Float64Array[]
  /** Action of the last time of the last block by node and room: it may lead again. */
  private readonly latest: Int16Array[]
  private readonly rules: Rules
  private readonly floor: Floor | null
  private readonly ceiling: Ceiling
  private readonly works: Works
  private readonly finishes: Finishes
  /** Whether more time left is never worth less. */
  private readonly rising: boolean
  /** Place of the row's values at the block's first time, where the best Q is found. */
  private best = 0
  /** Places by time within the block: of the best Q's action, of the leading action's Q, and of another's. */
  private readonly choice: number
  private readonly lead: number
  private readonly q: number
  /** Whether the values of a block are found in all rooms at once; place of a group of times for each room. */
  private readonly atOnce: boolean
  private readonly all: number
  /** Value of each node when the call comes; room does not matter then. */
  private readonly atCall: Float64Array

  constructor(problem: Problem, space: Workspace, { rules, floor = null, valueOnly = false }: Terms) {
    this.floor = floor
    this.problem = problem
    this.space = space
    this.rules = rules
    this.block = blockOf(problem)
    this.places = tableIn(space, problem, !valueOnly)
    this.works = new Works(problem, this.places, this.block, space)
    const { width } = this.works
    this.choice = space.take(width)
    this.lead = space.take(width)
    this.q = space.take(width)
    this.rising = rules.workAbove < 0
    this.atOnce = valueOnly && !rules.waits && this.block <= group
    this.all = space.take(this.atOnce ? problem.rooms.size * group : 0)
    this.finishes = new Finishes(problem, rules, width, space)
    // From here on the workspace does not grow.
    this.data = space.data
    const size = problem.rooms.size * this.places.row
    this.values = this.places.values.map((place) => space.data.subarray(place, place + size))
    this.latest = problem.graph.nodes.map(() => new Int16Array(problem.rooms.size).fill(stop))
    this.ceiling = new Ceiling(problem, this.places, this.values, false)
    this.atCall = new Float64Array(problem.graph.nodes.length)
  }

  run(from: number, to: number): void {
    this.works.begin(from)
    const within = this.ceiling.within(from, to, this.floor)
    for (let rooms = this.ceiling.rooms(within); rooms.length > 0; ) {
      this.decideIn(rooms, from, to)
      rooms = this.ceiling.lifted(within, from, to)
    }
    this.fill(from, to, within)
  }

  private decideIn(rooms: readonly number[], from: number, to: number): void {
    const { nodes } = this.problem.graph
    if (this.atOnce) {
      this.valueAtOnce(runsOf(rooms), from, to - from + 1)
      return
    }
    for (let n = 0; n < nodes.length; n++) {
      this.finishes.find(n, from, to - from + 1)
      for (let i = 0; i < rooms.length; i++) this.decide(n, rooms[i] as number, from, to)
    }
  }

  /**
   * The values alone of a block that is one group of times: all legs in all rooms at once. What can not be best is computed,
   * too, which costs less there than to find out.
   */
  private valueAtOnce(runs: readonly (readonly [first: number, many: number])[], from: number, count: number): void {
    const { data, places, finishes, lead: nothing, choice, all } = this
    const { kernel } = this.space
    const workFrom = Math.max(0, this.rules.workAbove + 1 - from)
    for (let n = 0; n < this.values.length; n++) {
      finishes.find(n, from, count)
      for (const [r, many] of runs) {
        const best = (places.values[n] as number) + r * places.row + places.pad + from
        kernel.combineRows(best, places.row, nothing, 0, nothing, 0, many, 0)
        if (workFrom < count)
          for (const work of this.works.of[n] as Work[]) this.works.offerRooms(work, { r, many, best }, all, choice)
        // Where a call cuts the block, legs are no choice before it.
        if (workFrom > 0)
          for (let k = 0; k < many; k++)
            data.fill(0, best + k * places.row, best + k * places.row + Math.min(workFrom, count))
        kernel.offerRows(best, places.row, choice, finishes.worth, 0, many, tie)
      }
    }
  }

  /** In memory of its own. */
  policy(): Policy {
    const { pad, row, actions } = this.places
    const size = this.problem.rooms.size * row
    return { pad, row, actions: actions.map((place) => this.space.short.slice(place, place + size)) }
  }

  /** Policy and values, in memory of their own. */
  table(): Table {
    return { ...this.policy(), values: this.values.map((values) => values.slice()) }
  }

  start(): number {
    const { pad, row } = this.places
    return startValue(this.problem, { pad, row, values: this.values })
  }

  /** Values are found in their row itself: what the inner loops write beyond the block, the next one overwrites. */
  private decide(n: number, r: number, from: number, to: number): void {
    const { choice, places, finishes } = this
    const { kernel } = this.space
    const count = to - from + 1
    const best = (places.values[n] as number) + r * places.row + places.pad + from
    this.best = best
    kernel.none(best, choice, count, stop)
    const workFrom = Math.max(0, this.rules.workAbove + 1 - from)
    if (workFrom < count) {
      if (this.rising) this.bestOfRising(n, r, count)
      else this.bestOfAll(n, r, workFrom, count)
    }
    kernel.offerEach(best, choice, finishes.worth, finishes.choice, count, tie)
    if (this.rules.waits) this.waitWhereIdle(n, from, count)
    this.keep(n, r, from, count)
  }

  /** Nothing is worth doing before the call: the robot waits for it. */
  private waitWhereIdle(n: number, from: number, count: number): void {
    const { data, best, choice, rules, atCall } = this
    for (let j = 0; j < count; j++) {
      if (from + j === rules.finishFrom) atCall[n] = data[best + j] as number
      if (data[choice + j] !== stop || from + j <= rules.finishFrom) continue
      data[best + j] = atCall[n] as number
      data[choice + j] = wait
    }
  }

  private keep(n: number, r: number, from: number, count: number): void {
    const { data, choice, places } = this
    ;(this.latest[n] as Int16Array)[r] = data[choice + count - 1] as number
    const actions = places.actions[n]
    if (actions === undefined) return
    this.space.kernel.shorten(actions + r * places.row + places.pad + from, choice, count)
  }

  /** The best collect or score leg of each time from `start` on, all of them computed. */
  private bestOfAll(n: number, r: number, start: number, count: number): void {
    const { data, best, choice } = this
    const groups = { first: Math.floor(start / group), last: Math.floor((count - 1) / group) }
    for (const work of this.works.of[n] as Work[])
      if (this.works.open(work, r)) this.offer(work, this.works.find(work, r, groups, this.q), groups)
    data.fill(0, best, best + start)
    data.fill(stop, choice, choice + start)
  }

  /** The same in a whole block where more time left is never worth less: what can not be best is not computed. */
  private bestOfRising(n: number, r: number, count: number): void {
    const works = this.works.of[n] as Work[]
    const last = Math.floor((count - 1) / group)
    const leading = this.leading(n, r, count)
    if (leading < 0) return
    const lead = this.works.find(works[leading] as Work, r, { first: 0, last }, this.lead)
    for (let w = 0; w < works.length; w++) {
      const work = works[w] as Work
      if (w === leading) this.offer(work, lead, { first: 0, last })
      else if (this.works.open(work, r)) this.offerWhereItMay(work, r, count, lead)
    }
  }

  /** Computes and offers a leg in those groups of times in which it may be better than the leading one and all finishes. */
  private offerWhereItMay(work: Work, r: number, count: number, lead: number): void {
    const { data, works } = this
    const { worth } = this.finishes
    const last = Math.floor((count - 1) / group)
    // Nothing before a time for which it is known is worth more than `most`.
    let most = works.at(work, r, count - 1)
    for (let g = last; g >= 0; g--) {
      const start = g * group
      if (most >= Math.max(data[lead + start] as number, data[worth + start] as number) - clearly) {
        const only = { first: g, last: g }
        const at = works.find(work, r, only, this.q)
        this.offer(work, at, only)
        most = data[at + start] as number
      } else if (g === last && g > 0) most = works.at(work, r, start)
    }
  }

  private offer(work: Work, at: number, { first, last }: { first: number; last: number }): void {
    const start = first * group
    const count = (last - first + 1) * group
    this.space.kernel.offer(this.best + start, this.choice + start, at + start, count, work.action, tie)
  }

  /** The leg that was best just before the block, or else the one that is best at its end; −1 where none can be done. */
  private leading(n: number, r: number, count: number): number {
    const works = this.works.of[n] as Work[]
    const before = (this.latest[n] as Int16Array)[r] as number
    let lead = -1
    let most = Number.NEGATIVE_INFINITY
    for (let w = 0; w < works.length; w++) {
      const work = works[w] as Work
      if (work.action === before && this.works.open(work, r)) return w
    }
    for (let w = 0; w < works.length; w++) {
      const work = works[w] as Work
      if (!this.works.open(work, r)) continue
      const value = this.works.at(work, r, count - 1)
      if (value > most) {
        most = value
        lead = w
      }
    }
    return lead
  }

  /**
   * More room than is of use is worth as much as what is, and below the floor the floor stands in: copied, so that no
   * reader has to clip. What can not be met is left empty.
   */
  private fill(from: number, to: number, within: Within): void {
    const { row, pad } = this.places
    for (const { first, many, clipped } of this.ceiling.clipped(within)) {
      const source = clipped * row + pad + from
      const target = first * row + pad + from
      for (let j = 0; j <= to - from; j += group)
        for (const place of this.places.values)
          this.space.kernel.combineRows(place + target + j, row, place + source + j, 0, this.lead, 0, many, 0)
      if (this.atOnce) continue
      for (const place of this.places.actions)
        this.space.kernel.copyShorts(place + target, row, many, place + source, to - from + 1)
      for (const latest of this.latest) latest.fill(latest[clipped] as number, first, first + many)
    }
  }
}

/** Rooms whose indices follow one another: the first, and how many. */
function runsOf(rooms: readonly number[]): [first: number, many: number][] {
  const runs: [number, number][] = []
  for (const r of rooms) {
    const last = runs.at(-1)
    if (last && last[0] + last[1] === r) last[1]++
    else runs.push([r, 1])
  }
  return runs
}

/** Times in a block: no more than the shortest leg takes, whole groups where that is possible. */
export function blockOf({ timed, steps }: Problem): number {
  const shortest = timed.filter((leg) => leg.leg.to >= 0).map((leg) => leg.shortest)
  const most = Math.min(longest, steps + 1, ...shortest)
  return most < group ? most : most - (most % group)
}
