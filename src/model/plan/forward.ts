import { roomLeft } from './binomial.ts'
import type { GraphLeg } from './graph.ts'
import { finishValue, type Problem } from './problem.ts'
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
const negligible = 1e-15

/** Follows the probability of being at each decision through teleop. */
export function flowOf(problem: Problem, policy: Table): Flow {
  const pass = new ForwardPass(problem, policy)
  pass.begin()
  for (let t = problem.steps; t >= 0; t--) pass.run(t)
  return pass.finish()
}

class ForwardPass {
  private readonly problem: Problem
  private readonly policy: Table
  private readonly row: number
  private readonly pad: number
  private readonly mass: Float64Array[]
  private readonly pieces: Float64Array
  private readonly points: Float64Array
  private readonly attempts: Float64Array
  private readonly finishPoints: Float64Array
  /** Chance of beginning each score leg on a capacity goal, by time left, for each number of pieces that find room. */
  private readonly begun: Map<number, Float64Array[]>

  constructor(problem: Problem, policy: Table) {
    this.problem = problem
    this.policy = policy
    this.row = policy.row
    this.pad = policy.pad
    this.mass = problem.graph.nodes.map(() => new Float64Array(problem.rooms.size * policy.row))
    this.pieces = new Float64Array(problem.graph.goals.length)
    this.points = new Float64Array(problem.graph.goals.length)
    this.attempts = new Float64Array(problem.graph.legs.length)
    this.finishPoints = new Float64Array(problem.graph.legs.length)
    this.begun = new Map()
  }

  begin(): void {
    const { graph, rooms, steps, autonomous } = this.problem
    const start = this.mass[graph.initial] as Float64Array
    for (const outcome of autonomous.outcomes) {
      const place = rooms.index(outcome.room) * this.row + this.pad + steps
      start[place] = (start[place] as number) + outcome.probability
    }
  }

  run(t: number): void {
    const { graph, rooms, rules } = this.problem
    for (const [n, node] of graph.nodes.entries()) {
      const mass = this.mass[n] as Float64Array
      for (let r = 0; r < rooms.size; r++) {
        const place = r * this.row + this.pad + t
        const here = mass[place] as number
        if (here < negligible) continue
        const action = this.policy.actions[n]?.[place] as number
        if (action === stop) continue
        if (action === wait) {
          const later = place - t + rules.finishFrom
          mass[later] = (mass[later] as number) + here
          continue
        }
        this.leg(node.legs[action] as GraphLeg, r, t, here)
      }
    }
  }

  private leg(leg: GraphLeg, r: number, t: number, here: number): void {
    const { problem } = this
    if (leg.to < 0) {
      this.attempts[leg.id] = (this.attempts[leg.id] as number) + here
      const earned = here * finishValue(leg) * (problem.reached[leg.id]?.[t] as number)
      this.finishPoints[leg.id] = (this.finishPoints[leg.id] as number) + earned
      return
    }
    if (leg.goal < 0) return this.pass(leg, r, t, here)
    const d = problem.rooms.dimensionOf[leg.goal] as number
    const room = d < 0 ? leg.load : problem.rooms.room(r, d)
    const fit = Math.min(room, leg.load)
    const pays = problem.legPays[leg.id] as NonNullable<Problem['legPays'][number]>
    this.points[leg.goal] = (this.points[leg.goal] as number) + here * (pays.points[fit]?.[t] as number)
    this.pieces[leg.goal] = (this.pieces[leg.goal] as number) + here * (pays.pieces[fit]?.[t] as number)
    if (d < 0) return this.pass(leg, r, t, here)
    this.note(leg, fit, t, here)
    const successes = problem.successes[leg.id] as Float64Array
    const stride = problem.rooms.strides[d] as number
    for (let b = 0; b <= leg.load; b++) {
      const p = successes[b] as number
      if (p > 0) this.pass(leg, r - Math.min(b, room) * stride, t, here * p)
    }
  }

  /** Hand mass on to where the leg ends. */
  private pass(leg: GraphLeg, r: number, t: number, amount: number): void {
    const { shortest, chance } = this.problem.timed[leg.id] as Problem['timed'][number]
    const target = this.mass[leg.to] as Float64Array
    const count = Math.min(chance.length, t - shortest + 1)
    if (count <= 0) return
    const { size, most } = this.problem.rooms
    if (size === 1 || this.unclipped(r, t - shortest - count + 1)) {
      const start = r * this.row + this.pad + t - shortest
      for (let i = 0; i < count; i++) target[start - i] = (target[start - i] as number) + amount * (chance[i] as number)
      return
    }
    for (let i = 0; i < count; i++) {
      const time = t - shortest - i
      const clipped = most.length === 1 ? Math.min(r, this.problem.rooms.high[0]?.[time] as number) : this.clip(r, time)
      const place = clipped * this.row + this.pad + time
      target[place] = (target[place] as number) + amount * (chance[i] as number)
    }
  }

  /** Whether room r needs no clipping at any time left of t or more (the clip shrinks as time runs down). */
  private unclipped(r: number, t: number): boolean {
    const { rooms } = this.problem
    for (let d = 0; d < rooms.most.length; d++) if (rooms.room(r, d) > (rooms.high[d]?.[t] as number)) return false
    return true
  }

  private clip(r: number, t: number): number {
    const { rooms } = this.problem
    return rooms.index(rooms.most.map((_, d) => Math.min(rooms.room(r, d), rooms.high[d]?.[t] as number)))
  }

  private note(leg: GraphLeg, fit: number, t: number, here: number): void {
    let begun = this.begun.get(leg.id)
    if (!begun) {
      begun = Array.from({ length: leg.load + 1 }, () => new Float64Array(this.problem.steps + 1))
      this.begun.set(leg.id, begun)
    }
    const byTime = begun[fit] as Float64Array
    byTime[t] = (byTime[t] as number) + here
  }

  finish(): Flow {
    return {
      mass: this.mass,
      row: this.row,
      pad: this.pad,
      pieces: this.pieces,
      points: this.points,
      attempts: this.attempts,
      finishPoints: this.finishPoints,
      placed: this.placed(),
    }
  }

  private placed(): Float64Array[] {
    const { problem } = this
    const out = problem.rooms.goals.map(() => new Float64Array(problem.steps + 1))
    for (const [id, begun] of this.begun) {
      const leg = problem.graph.legs[id] as GraphLeg
      const byTime = out[problem.rooms.dimensionOf[leg.goal] as number] as Float64Array
      const { pieces } = problem.timed[id] as Problem['timed'][number]
      for (const [fit, starts] of begun.entries())
        for (let i = 0; i < leg.load; i++) {
          const weight = leg.success * roomLeft(i, leg.success, fit)
          const times = pieces[Math.min(i, pieces.length - 1)] as (typeof pieces)[number]
          if (weight > 0) spread(byTime, starts, times.first, times.mass, weight)
        }
    }
    for (const byTime of out)
      for (let t = byTime.length - 2; t >= 0; t--) byTime[t] = (byTime[t] as number) + (byTime[t + 1] as number)
    return out
  }
}

function spread(out: Float64Array, starts: Float64Array, first: number, mass: Float64Array, weight: number): void {
  for (let t = first; t < starts.length; t++) {
    const amount = weight * (starts[t] as number)
    if (amount < negligible) continue
    const count = Math.min(mass.length, t - first + 1)
    for (let i = 0; i < count; i++) out[t - first - i] = (out[t - first - i] as number) + amount * (mass[i] as number)
  }
}
