import { roomLeft } from './binomial.ts'
import type { GraphLeg } from './graph.ts'
import { finishValue, type Problem } from './problem.ts'
import { type Arrival, Arrivals, blockOf, blocks, Clip, runsOf } from './run.ts'
import { stop, type Table, wait } from './table.ts'

/** How much of the match's probability passes where, under a policy. */
export interface Flow {
  /** mass[node][room · row + pad + t]: chance to decide there; laid out as the table of the policy. */
  readonly mass: readonly Float64Array[]
  readonly row: number
  readonly pad: number
  /** Expected pieces and points per goal, attempts and points per finish leg (by leg id). */
  readonly pieces: Float64Array
  readonly points: Float64Array
  readonly attempts: Float64Array
  readonly finishPoints: Float64Array
  /** placed[d][t]: expected pieces placed in teleop on capacity goal d by the time t steps are left. */
  readonly placed: readonly Float64Array[]
}

/** Mass below this is not followed further. */
const negligible = 1e-12

/** Follows the probability of being at each decision through teleop. */
export function flowOf(problem: Problem, policy: Table): Flow {
  return new ForwardPass(problem, policy).run()
}

class ForwardPass {
  private readonly problem: Problem
  private readonly policy: Table
  private readonly mass: Float64Array[]
  private readonly pieces: Float64Array
  private readonly points: Float64Array
  private readonly attempts: Float64Array
  private readonly finishPoints: Float64Array
  private readonly arrivals: Arrivals
  private readonly clip: Clip
  /** Chance of beginning each score leg on a capacity goal, by time left, for each number of pieces that find room. */
  private readonly begun = new Map<number, Float64Array[]>()

  constructor(problem: Problem, policy: Table) {
    this.problem = problem
    this.policy = policy
    this.mass = problem.graph.nodes.map(() => new Float64Array(problem.rooms.size * policy.row))
    this.pieces = new Float64Array(problem.graph.goals.length)
    this.points = new Float64Array(problem.graph.goals.length)
    this.attempts = new Float64Array(problem.graph.legs.length)
    this.finishPoints = new Float64Array(problem.graph.legs.length)
    this.arrivals = new Arrivals(problem, blockOf(problem))
    this.clip = new Clip(problem)
  }

  run(): Flow {
    const { graph, rooms, steps, autonomous } = this.problem
    const start = this.mass[graph.initial] as Float64Array
    for (const outcome of autonomous.outcomes) {
      const place = this.rowOf(rooms.index(outcome.room)) + steps
      start[place] = (start[place] as number) + outcome.probability
    }
    for (const { from, to } of blocks(this.problem))
      for (const [n, node] of graph.nodes.entries())
        for (let r = 0; r < rooms.size; r++) {
          const row = this.rowOf(r)
          const mass = this.mass[n] as Float64Array
          runsOf(mass, row, from, to, this.policy.actions[n] as Int16Array, row, negligible, (at, count, action) => {
            if (action === stop) return
            if (action === wait) this.wait(mass, row, at, count)
            else this.leg(node.legs[action] as GraphLeg, r, mass, row, at, count)
          })
        }
    const { mass, pieces, points, attempts, finishPoints } = this
    const { row, pad } = this.policy
    return { mass, row, pad, pieces, points, attempts, finishPoints, placed: this.placed() }
  }

  private rowOf = (r: number) => r * this.policy.row + this.policy.pad

  private wait(mass: Float64Array, row: number, at: number, count: number): void {
    const call = row + this.problem.rules.finishFrom
    for (let t = at; t < at + count; t++) mass[call] = (mass[call] as number) + (mass[row + t] as number)
  }

  private leg(leg: GraphLeg, r: number, mass: Float64Array, row: number, at: number, count: number): void {
    const { problem } = this
    if (leg.to < 0) {
      const reached = problem.reached[leg.id] as Float64Array
      this.attempts[leg.id] = (this.attempts[leg.id] as number) + sum(mass, row, at, count)
      this.finishPoints[leg.id] =
        (this.finishPoints[leg.id] as number) + finishValue(leg) * weighted(mass, row, at, count, reached)
      return
    }
    const d = leg.goal < 0 ? -1 : (problem.rooms.dimensionOf[leg.goal] as number)
    const room = d < 0 ? leg.load : problem.rooms.room(r, d)
    const fit = Math.min(room, leg.load)
    if (leg.goal >= 0) {
      const pays = problem.legPays[leg.id] as NonNullable<Problem['legPays'][number]>
      this.points[leg.goal] =
        (this.points[leg.goal] as number) + weighted(mass, row, at, count, pays.points[fit] as Float64Array)
      this.pieces[leg.goal] =
        (this.pieces[leg.goal] as number) + weighted(mass, row, at, count, pays.pieces[fit] as Float64Array)
    }
    if (d >= 0) this.note(leg, fit, mass, row, at, count)
    const successes = d < 0 ? null : (problem.successes[leg.id] as Float64Array)
    const stride = d < 0 ? 0 : (problem.rooms.strides[d] as number)
    const arrival = this.arrivals.of(mass, row + at, at, count, problem.timed[leg.id] as Problem['timed'][number])
    if (!arrival) return
    if (!successes) this.arrive(leg.to, r, arrival, 1)
    else
      for (let b = 0; b <= leg.load; b++)
        this.arrive(leg.to, r - Math.min(b, room) * stride, arrival, successes[b] as number)
  }

  private arrive(n: number, r: number, arrival: Arrival, chance: number): void {
    if (chance <= 0) return
    const target = this.mass[n] as Float64Array
    const clear = this.clip.clearFrom[r] as number
    const { mass, at, first, count, lateAt, lateMass, lateCount } = arrival
    for (let k = 0; k < lateCount; k++) {
      const t = lateAt[k] as number
      const place = this.rowOf(this.clip.at(r, t)) + t
      target[place] = (target[place] as number) + chance * (lateMass[k] as number)
    }
    const clipped = Math.min(count, Math.max(0, clear - first))
    for (let i = 0; i < clipped; i++) {
      const place = this.rowOf(this.clip.at(r, first + i)) + first + i
      target[place] = (target[place] as number) + chance * (mass[at + i] as number)
    }
    const place = this.rowOf(r) + first
    for (let i = clipped; i < count; i++)
      target[place + i] = (target[place + i] as number) + chance * (mass[at + i] as number)
  }

  private note(leg: GraphLeg, fit: number, mass: Float64Array, row: number, at: number, count: number): void {
    let begun = this.begun.get(leg.id)
    if (!begun) {
      begun = Array.from({ length: leg.load + 1 }, () => new Float64Array(this.problem.steps + 1))
      this.begun.set(leg.id, begun)
    }
    const byTime = begun[fit] as Float64Array
    for (let t = at; t < at + count; t++) byTime[t] = (byTime[t] as number) + (mass[row + t] as number)
  }

  private placed(): Float64Array[] {
    const { problem } = this
    const out = problem.rooms.goals.map(() => new Float64Array(problem.steps + 1))
    for (const [id, begun] of this.begun) {
      const leg = problem.graph.legs[id] as GraphLeg
      const byTime = out[problem.rooms.dimensionOf[leg.goal] as number] as Float64Array
      const { pieces } = problem.timed[id] as Problem['timed'][number]
      for (let i = 0; i < leg.load; i++) {
        // Chance that piece i + 1 is placed, by when its leg begins.
        const starts = new Float64Array(problem.steps + 1)
        for (const [fit, times] of begun.entries()) {
          const weight = leg.success * roomLeft(i, leg.success, fit)
          if (weight > 0)
            for (let t = 0; t < starts.length; t++) starts[t] = (starts[t] as number) + weight * (times[t] as number)
        }
        const times = pieces[Math.min(i, pieces.length - 1)] as (typeof pieces)[number]
        spread(byTime, starts, times.first, times.mass)
      }
    }
    for (const byTime of out)
      for (let t = byTime.length - 2; t >= 0; t--) byTime[t] = (byTime[t] as number) + (byTime[t + 1] as number)
    return out
  }
}

function spread(out: Float64Array, starts: Float64Array, first: number, mass: Float64Array): void {
  for (let t = first; t < starts.length; t++) {
    const amount = starts[t] as number
    if (amount < 1e-9) continue
    const count = Math.min(mass.length, t - first + 1)
    for (let i = 0; i < count; i++) out[t - first - i] = (out[t - first - i] as number) + amount * (mass[i] as number)
  }
}

function sum(mass: Float64Array, row: number, at: number, count: number): number {
  let total = 0
  for (let t = at; t < at + count; t++) total += mass[row + t] as number
  return total
}

function weighted(mass: Float64Array, row: number, at: number, count: number, weights: Float64Array): number {
  let total = 0
  for (let t = at; t < at + count; t++) total += (mass[row + t] as number) * (weights[t] as number)
  return total
}
