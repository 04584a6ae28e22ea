import { Workspace } from '../kernel/index.ts'
import { type Pmf, product } from '../leg/pmf.ts'
import { Begun } from './begun.ts'
import { roomLeft } from './binomial.ts'
import type { Floor } from './floor.ts'
import type { GraphLeg, GraphNode } from './graph.ts'
import { finishValue, type Problem, reachedIn } from './problem.ts'
import { blocks } from './run.ts'
import { sum, weighted } from './sums.ts'
import { type Policy, stop, wait } from './table.ts'
import { Waiting } from './waiting.ts'

/** How much of the match's probability passes where, under a policy. */
export interface Flow {
  /** mass()[node][room · row + pad + t]: chance to decide there, laid out as the table of the policy; found when asked for. */
  mass(): readonly Float64Array[]
  readonly row: number
  readonly pad: number
  /** Expected pieces and points per goal, attempts and points per finish leg (by leg id). */
  readonly pieces: Float64Array
  readonly points: Float64Array
  readonly attempts: Float64Array
  readonly finishPoints: Float64Array
  /** placed[d][t]: expected pieces placed in teleop on capacity goal d by the time t steps are left; computed when asked for. */
  placed(): readonly Float64Array[]
}

/** Mass below this is not followed further. */
const negligible = 1e-13

/** Times that are taken together: about as many as legs take at least, so that little arrives within them. */
const block = 40

/** A chance of finding room that adds nothing. */
const nothing = 1e-15

/**
 * Follows the probability of being at each decision through teleop. Blocks of times are carried through the legs at once,
 * and again what comes to lie within the block, until nothing is left there.
 * @param massToo whether the masses will be asked for: one pass then finds them, too, instead of another
 */
export function flowOf(problem: Problem, policy: Policy, massToo = false): Flow {
  if (massToo)
    return passAlong(problem, policy, (pass) => {
      const mass = pass.masses()
      return { ...pass.flow(), mass: () => mass }
    })
  let mass: readonly Float64Array[] | null = null
  return {
    ...passAlong(problem, policy, (pass) => pass.run().flow()),
    mass: () => (mass ??= passAlong(problem, policy, (pass) => pass.masses())),
  }
}

/** Expected points of teleop alone, and the chance of decisions below a floor, each counted. */
export function valueAlong(
  problem: Problem,
  policy: Policy,
  floor: Floor | null = null,
): { value: number; below: number } {
  return passAlong(problem, policy, (pass) => {
    const { points, finishPoints, below } = pass.forValue(floor).run()
    return { value: flowValue({ points, finishPoints }), below }
  })
}

/** Expected points of teleop along a flow. */
export const flowValue = ({ points, finishPoints }: Pick<Flow, 'points' | 'finishPoints'>): number =>
  sumOf(points) + sumOf(finishPoints)

const sumOf = (numbers: Float64Array): number => numbers.reduce((sum, x) => sum + x, 0)

function passAlong<T>(problem: Problem, policy: Policy, result: (pass: ForwardPass) => T): T {
  const space = Workspace.borrowed()
  const found = result(new ForwardPass(problem, policy, space))
  space.giveBack()
  return found
}

class ForwardPass {
  private readonly problem: Problem
  private readonly policy: Policy
  private readonly space: Workspace
  /** What has been decided, and when a room is below what is watched for: only where somebody asked for it. */
  private mass: Float64Array[] | null = null
  private floor: Floor | null = null
  /** By dimension, the room below which some time of the block lies below the floor. */
  private readonly few: number[] = []
  below = 0
  private valueOnly = false
  private readonly pieces: Float64Array
  readonly points: Float64Array
  private readonly attempts: Float64Array
  readonly finishPoints: Float64Array
  private readonly waiting: Waiting
  private readonly begun: Begun
  /** Chance of beginning each score leg on a capacity goal, by time left, for each number of pieces that find room. */
  private readonly noted = new Map<number, Float64Array[]>()

  constructor(problem: Problem, policy: Policy, space: Workspace) {
    this.problem = problem
    this.policy = policy
    this.space = space
    this.pieces = new Float64Array(problem.graph.goals.length)
    this.points = new Float64Array(problem.graph.goals.length)
    this.attempts = new Float64Array(problem.graph.legs.length)
    this.finishPoints = new Float64Array(problem.graph.legs.length)
    this.waiting = new Waiting(problem, space)
    this.begun = new Begun(problem, space, negligible)
  }

  masses(): readonly Float64Array[] {
    const size = this.problem.rooms.size * this.policy.row
    this.mass = this.problem.graph.nodes.map(() => new Float64Array(size))
    this.run()
    return this.mass
  }

  /** Leaves out what only a flow tells, and counts what comes below the floor. */
  forValue(floor: Floor | null): this {
    this.valueOnly = true
    this.floor = floor
    return this
  }

  run(): this {
    const { graph, rooms, steps, autonomous } = this.problem
    for (const outcome of autonomous.outcomes)
      this.add(graph.initial * rooms.size + rooms.index(outcome.room), steps, outcome.probability)
    for (const { from, to } of blocks(this.problem, block)) {
      this.begin(from, to)
      do this.wave(from, to)
      while (this.begun.again)
    }
    return this
  }

  flow(): Omit<Flow, 'mass'> {
    const { pieces, points, attempts, finishPoints } = this
    const { row, pad } = this.policy
    let placed: Float64Array[] | null = null
    const once = () => (placed ??= this.placed())
    return { row, pad, pieces, points, attempts, finishPoints, placed: once }
  }

  private begin(from: number, to: number): void {
    this.begun.begin(from)
    this.waiting.begin(from)
    for (const [d, few] of (this.floor ?? []).entries()) {
      let most = 0
      for (let t = from; t <= to; t++) if ((few[t] as number) > most) most = few[t] as number
      this.few[d] = most
    }
  }

  /** Takes up what waits for its decision in a block of times. */
  private wave(from: number, to: number): void {
    const { waiting, begun } = this
    const { graph, rooms } = this.problem
    begun.again = false
    for (let n = 0; n < graph.nodes.length; n++) {
      waiting.clip(n)
      for (let r = 0; r < rooms.size; r++) {
        const slot = n * rooms.size + r
        const low = Math.max(from, waiting.low[slot] as number)
        const high = Math.min(to, waiting.high[slot] as number)
        if (low > high) continue
        if (this.floor) this.noteBelow(r, waiting.place(slot), low, high)
        this.decide(n, r, low, high)
        waiting.clearFrom(slot, low)
      }
      begun.carry(graph.nodes[n] as GraphNode, waiting)
    }
  }

  /** What waits at a node in a room, from time left `from` to `to`, does as the policy says; negligible ends are left out. */
  private decide(n: number, r: number, from: number, to: number): void {
    const { policy } = this
    const { legs } = this.problem.graph.nodes[n] as GraphNode
    const slot = n * this.problem.rooms.size + r
    const at = this.waiting.place(slot)
    const { data } = this.space
    const mass = this.mass?.[n]
    const actions = policy.actions[n] as Int16Array
    const policyAt = r * policy.row + policy.pad
    if (mass)
      for (let t = from; t <= to; t++) mass[policyAt + t] = (mass[policyAt + t] as number) + (data[at + t] as number)
    let t = from
    let high = to
    while (t <= high && (data[at + t] as number) < negligible) t++
    while (t <= high && (data[at + high] as number) < negligible) high--
    while (t <= high) {
      const action = actions[policyAt + t] as number
      let end = t + 1
      while (end <= high && actions[policyAt + end] === action) end++
      if (action === wait) this.wait(slot, at + t, end - t)
      else if (action !== stop) this.leg(legs[action] as GraphLeg, action, r, at + t, t, end - t)
      t = end
    }
  }

  private noteBelow(r: number, start: number, low: number, high: number): void {
    const { rooms } = this.problem
    const { data } = this.space
    for (let d = 0; d < this.few.length; d++) {
      const room = rooms.room(r, d)
      if (room >= (this.few[d] as number)) continue
      const few = (this.floor as Floor)[d] as Int32Array
      for (let t = low; t <= high; t++) if (room < (few[t] as number)) this.below += data[start + t] as number
    }
  }

  private add(slot: number, t: number, mass: number): void {
    const place = this.waiting.place(slot) + t
    this.space.data[place] = (this.space.data[place] as number) + mass
    this.waiting.widen(slot, t, t)
  }

  private wait(slot: number, start: number, count: number): void {
    this.add(slot, this.problem.rules.finishFrom, sum(this.space.data, start, count))
  }

  private leg(leg: GraphLeg, action: number, r: number, start: number, at: number, count: number): void {
    const { problem } = this
    const { data } = this.space
    if (leg.to < 0) {
      const reached = reachedIn(problem, leg.id)
      if (!this.valueOnly) this.attempts[leg.id] = (this.attempts[leg.id] as number) + sum(data, start, count)
      this.finishPoints[leg.id] =
        (this.finishPoints[leg.id] as number) + finishValue(leg) * weighted(data, start, at, count, reached)
      return
    }
    const d = leg.goal < 0 ? -1 : (problem.rooms.dimensionOf[leg.goal] as number)
    const room = d < 0 ? leg.load : problem.rooms.room(r, d)
    const fit = Math.min(room, leg.load)
    if (leg.goal >= 0) {
      const pays = problem.legPays[leg.id] as NonNullable<Problem['legPays'][number]>
      this.points[leg.goal] =
        (this.points[leg.goal] as number) + weighted(data, start, at, count, pays.points[fit] as Float64Array)
      if (!this.valueOnly)
        this.pieces[leg.goal] =
          (this.pieces[leg.goal] as number) + weighted(data, start, at, count, pays.pieces()[fit] as Float64Array)
    }
    if (d >= 0 && !this.valueOnly) this.note(leg, fit, start, at, count)
    if (d < 0) this.begun.add(action, r, start, at, count, 1)
    else {
      const successes = problem.successes[leg.id] as Float64Array
      const stride = problem.rooms.strides[d] as number
      for (let b = 0; b < fit; b++) this.begun.add(action, r - b * stride, start, at, count, successes[b] as number)
      this.begun.add(action, r - fit * stride, start, at, count, sum(successes, fit, leg.load + 1 - fit))
    }
  }

  private note(leg: GraphLeg, fit: number, start: number, at: number, count: number): void {
    let begun = this.noted.get(leg.id)
    if (!begun) {
      begun = Array.from({ length: leg.load + 1 }, () => new Float64Array(this.problem.steps + 1))
      this.noted.set(leg.id, begun)
    }
    const byTime = begun[fit] as Float64Array
    const { data } = this.space
    for (let i = 0; i < count; i++) byTime[at + i] = (byTime[at + i] as number) + (data[start + i] as number)
  }

  private placed(): Float64Array[] {
    const { problem } = this
    const out = problem.rooms.goals.map(() => new Float64Array(problem.steps + 1))
    for (const [id, begun] of this.noted) {
      const leg = problem.graph.legs[id] as GraphLeg
      const byTime = out[problem.rooms.dimensionOf[leg.goal] as number] as Float64Array
      const { pieces } = problem.timed[id] as Problem['timed'][number]
      const from = begun.map((times) => times.findIndex((mass) => mass > 0))
      const to = begun.map((times) => times.findLastIndex((mass) => mass > 0))
      for (let i = 0; i < leg.load; i++) {
        // Chance that piece i + 1 is placed, by when its leg begins.
        const starts = new Float64Array(problem.steps + 1)
        for (const [fit, times] of begun.entries()) {
          const weight = leg.success * roomLeft(i, leg.success, fit)
          const last = weight > nothing ? (to[fit] as number) : -1
          for (let t = Math.max(0, from[fit] as number); t <= last; t++)
            starts[t] = (starts[t] as number) + weight * (times[t] as number)
        }
        const times = pieces[Math.min(i, pieces.length - 1)] as (typeof pieces)[number]
        spread(byTime, starts, times)
      }
    }
    for (const byTime of out)
      for (let t = byTime.length - 2; t >= 0; t--) byTime[t] = (byTime[t] as number) + (byTime[t + 1] as number)
    return out
  }
}

/** What is begun at some times left counts a leg's time later: adds it to `out`, by time left. */
function spread(out: Float64Array, starts: Float64Array, { first, mass }: Pmf): void {
  const steps = starts.length - 1
  const counted = product(starts.slice().reverse(), mass)
  for (let passed = first; passed <= steps; passed++)
    out[steps - passed] = (out[steps - passed] as number) + (counted[passed - first] as number)
}
