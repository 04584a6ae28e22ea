import { Workspace } from '../kernel/index.ts'
import { group } from './ahead.ts'
import { blockOf } from './backward.ts'
import { Ceiling, type Within } from './ceiling.ts'
import type { GraphLeg, GraphNode } from './graph.ts'
import { finishValue, type Problem, reachedIn } from './problem.ts'
import { Clip } from './run.ts'
import { type Policy, type TablePlaces, tableIn, type Values, wait } from './table.ts'
import { type Work, Works } from './works.ts'

/** Values of a given policy under the problem's leg times: what the plan of form 1 earns when every time is stretched. */
export function evaluatePolicy(problem: Problem, policy: Policy): Values {
  return passAlong(problem, policy, null, ({ values, ...table }) => ({
    ...table,
    values: values.map((v) => v.slice()),
  }))
}

/** The same where play can come to from teleop's start, whatever it begins with; 0 elsewhere. Gone when `use` is back. */
export function withValuesAhead<T>(problem: Problem, policy: Policy, use: (values: Values) => T): T {
  return passAlong(problem, policy, aheadOf(problem, policy), use)
}

function passAlong<T>(problem: Problem, policy: Policy, until: Int32Array | null, use: (values: Values) => T): T {
  const space = Workspace.borrowed()
  const found = use(new ToldPass(problem, policy, until, space).run())
  space.giveBack()
  return found
}

/**
 * By node · rooms + room, the most time left (steps) with which play from teleop's start can come to a decision there; −1 where
 * it never does. From then on it is taken to be possible: legs have long tails.
 */
function aheadOf(problem: Problem, policy: Policy): Int32Array {
  const { graph, rooms, steps, timed, autonomous, successes } = problem
  const clip = Clip.of(problem)
  const block = blockOf(problem)
  const until = new Int32Array(graph.nodes.length * rooms.size).fill(-1)
  const raise = (n: number, r: number, t: number) => {
    const place = n * rooms.size + r
    if (t > (until[place] as number)) until[place] = t
  }
  const begin = (leg: GraphLeg, r: number, t: number) => {
    const left = t - (timed[leg.id] as Problem['timed'][number]).shortest
    if (leg.to < 0) return
    const d = rooms.dimensionOf[leg.goal] ?? -1
    if (d < 0) raise(leg.to, r, left)
    else
      for (const [b, chance] of (successes[leg.id] as Float64Array).entries())
        if (chance > 0) raise(leg.to, r - Math.min(b, rooms.room(r, d)) * (rooms.strides[d] as number), left)
  }
  for (const { room } of autonomous.outcomes)
    for (const leg of (graph.nodes[graph.initial] as GraphNode).legs) begin(leg, rooms.index(room), steps)
  for (let from = steps - (steps % block); from >= 0; from -= block)
    for (let n = 0; n < graph.nodes.length; n++) {
      const { legs } = graph.nodes[n] as GraphNode
      const actions = policy.actions[n] as Int16Array
      for (let r = rooms.size - 1; r >= 0; r--) {
        const to = Math.min(from + block - 1, until[n * rooms.size + r] as number)
        if (to < from) continue
        // What is above in a block is worth what the most room that can be used in it is.
        const clipped = clip.at(r, Math.min(steps, from + block - 1))
        if (clipped !== r) raise(n, clipped, to)
        const row = r * policy.row + policy.pad
        for (let t = to; clipped === r && t >= from; t--) {
          const action = actions[row + t] as number
          if (action >= 0 && (t === to || action !== actions[row + t + 1])) begin(legs[action] as GraphLeg, r, t)
        }
      }
    }
  return until
}

/** Values by backward induction in the blocks of `BackwardPass`, where no action is sought. */
class ToldPass {
  private readonly problem: Problem
  private readonly policy: Policy
  private readonly until: Int32Array | null
  private readonly space: Workspace
  private readonly block: number
  private readonly places: TablePlaces
  private readonly works: Works
  /** Per node and action. */
  private readonly workOf: readonly (Work | undefined)[][]
  private readonly q: number
  private readonly values: Float64Array[]
  private readonly ceiling: Ceiling
  /** Value of each node when the call comes; room does not matter then. */
  private readonly atCall: Float64Array

  /** @param until where play can come to, as `aheadOf` tells; null for everywhere */
  constructor(problem: Problem, policy: Policy, until: Int32Array | null, space: Workspace) {
    this.problem = problem
    this.policy = policy
    this.until = until
    this.space = space
    this.block = blockOf(problem)
    this.places = tableIn(space, problem, false)
    this.works = new Works(problem, this.places, this.block, space)
    this.workOf = this.works.of.map((works) => {
      const byAction: Work[] = []
      for (const work of works) byAction[work.action] = work
      return byAction
    })
    this.q = space.take(this.works.width)
    // From here on the workspace does not grow.
    const size = problem.rooms.size * this.places.row
    this.values = this.places.values.map((place) => space.data.subarray(place, place + size))
    // The same value in two rooms says nothing about further ones.
    this.ceiling = new Ceiling(problem, this.places, this.values, true)
    this.atCall = new Float64Array(problem.graph.nodes.length)
  }

  run(): Values {
    const { problem, until } = this
    const { nodes } = problem.graph
    for (let from = 0; from <= problem.steps; from += this.block) {
      const to = Math.min(problem.steps, from + this.block - 1)
      this.works.begin(from)
      const within = this.ceiling.within(from, to, null)
      const rooms = this.ceiling.rooms(within)
      for (let n = 0; n < nodes.length; n++)
        for (const r of rooms)
          if (!until || (until[n * problem.rooms.size + r] as number) >= from) this.value(n, r, from, to - from + 1)
      this.fill(from, to, within)
    }
    const { pad, row } = this.places
    return { pad, row, values: this.values }
  }

  /** Values of a row from time left `from` on, run by run of the same action. */
  private value(n: number, r: number, from: number, count: number): void {
    const { policy, places, atCall } = this
    const { data } = this.space
    const call = this.problem.rules.finishFrom - from
    const actions = policy.actions[n] as Int16Array
    const told = r * policy.row + policy.pad + from
    const place = (places.values[n] as number) + r * places.row + places.pad + from
    data.fill(0, place, place + count)
    for (let j = 0; j < count; ) {
      const action = actions[told + j] as number
      const first = j++
      while (j < count && actions[told + j] === action) j++
      if (action === wait) data.fill(atCall[n] as number, place + first, place + j)
      else if (action >= 0) this.begun(n, r, action, { from, first, end: j, place })
      if (first <= call && call < j) atCall[n] = data[place + call] as number
    }
  }

  private begun(n: number, r: number, action: number, { from, first, end, place }: Run): void {
    const { data } = this.space
    const work = this.workOf[n]?.[action]
    if (work) {
      const groups = { first: Math.floor(first / group), last: Math.floor((end - 1) / group) }
      const q = this.works.find(work, r, groups, this.q)
      for (let j = first; j < end; j++) data[place + j] = data[q + j] as number
      return
    }
    const leg = this.problem.graph.nodes[n]?.legs[action] as GraphLeg
    const value = finishValue(leg)
    const reached = reachedIn(this.problem, leg.id)
    for (let j = first; j < end; j++) data[place + j] = value * (reached[from + j] as number)
  }

  /** More room than is of use is worth as much as what is: copied, so that no reader has to clip. */
  private fill(from: number, to: number, within: Within): void {
    const { row, pad, values } = this.places
    const { kernel } = this.space
    for (const { first, many, clipped } of this.ceiling.clipped(within)) {
      const source = clipped * row + pad + from
      const target = first * row + pad + from
      for (let j = 0; j <= to - from; j += group)
        for (const place of values)
          kernel.combineRows(place + target + j, row, place + source + j, 0, place + source + j, 0, many, 0)
    }
  }
}

/** Times within a block with the same action: its `first` and `end`, and the place of the block's values. */
interface Run {
  readonly from: number
  readonly first: number
  readonly end: number
  readonly place: number
}
