import { binomial } from './binomial.ts'
import type { GraphLeg } from './graph.ts'
import type { Problem } from './problem.ts'
import { stop, type Table, wait } from './table.ts'
import type { Tally } from './tally.ts'
import { cumulative } from './timed.ts'
import { addMoved, Vectors } from './vectors.ts'

/** Probability below this is not followed further; what is lost in all stays under 1e-9 and is made good at the end. */
const negligible = 1e-14

/** Distribution of a tally: [amount, probability], rising, in the tally's own unit (points or pieces). */
export type Spread = [number, number][]

/**
 * The exact distribution of a tally under a policy: for every state that the match can be in, a vector over the
 * amounts so far is carried forward through teleop.
 */
export function spreadOf(problem: Problem, policy: Table, tally: Tally): Float64Array {
  const pass = new SpreadPass(problem, policy, tally)
  return pass.run()
}

/** A vector over fine lattice units as [amount, probability], what is negligible left out. */
export function listed(mass: Float64Array, unit: number, least = 5e-10): Spread {
  const out: Spread = []
  for (let i = 0; i < mass.length; i++) if ((mass[i] as number) > least) out.push([round(i * unit), mass[i] as number])
  const total = out.reduce((sum, [, p]) => sum + p, 0)
  return out.map(([amount, p]) => [amount, p / total])
}

const round = (x: number) => Math.round(x * 1e9) / 1e9

class SpreadPass {
  private readonly problem: Problem
  private readonly policy: Table
  private readonly tally: Tally
  private readonly coarse: Vectors
  private readonly fine: Vectors
  private readonly final: Vectors
  private readonly out: number
  /** slots[node][room · (steps + 1) + t]: 1 + slot of the vector there, 0 for none. */
  private readonly slots: Int32Array[]
  private readonly reached = new Map<number, Float64Array[]>()

  constructor(problem: Problem, policy: Table, tally: Tally) {
    this.problem = problem
    this.policy = policy
    this.tally = tally
    const length = Math.ceil(tally.most + 1e-6) + 2
    this.coarse = new Vectors(length)
    this.fine = new Vectors(length * tally.lattice.ratio, tally.fineBelow > 0 ? 64 : 1)
    this.final = new Vectors(length * tally.lattice.ratio, 1)
    this.out = this.final.take()
    this.slots = problem.graph.nodes.map(() => new Int32Array(problem.rooms.size * (problem.steps + 1)))
  }

  run(): Float64Array {
    this.begin()
    const { graph, rooms, steps } = this.problem
    for (let t = steps; t >= 0; t--)
      for (let n = 0; n < graph.nodes.length; n++)
        for (let r = 0; r < rooms.size; r++) {
          const slot = (this.slots[n] as Int32Array)[r * (steps + 1) + t] as number
          if (slot > 0) this.state(n, r, t, slot - 1)
        }
    const mass = this.final.data.slice(0, this.final.length)
    const total = mass.reduce((sum, p) => sum + p, 0)
    return mass.map((p) => p / total)
  }

  private begin(): void {
    const { graph, rooms, steps, autonomous } = this.problem
    const unit = new Vectors(1, 1)
    const one = unit.take()
    unit.data[0] = 1
    unit.low[one] = 0
    unit.high[one] = 0
    for (const outcome of autonomous.outcomes) {
      const slot = this.slotAt(graph.initial, rooms.index(outcome.room), steps)
      const to = this.vectorsAt(steps)
      addMoved(unit, one, to, slot, outcome.probability, this.tally.initial(outcome) * this.ratioAt(steps), 1)
    }
  }

  private vectorsAt = (t: number) => (t < this.tally.fineBelow ? this.fine : this.coarse)
  private ratioAt = (t: number) => (t < this.tally.fineBelow ? this.tally.lattice.ratio : 1)

  private slotAt(n: number, r: number, t: number): number {
    const slots = this.slots[n] as Int32Array
    const place = r * (this.problem.steps + 1) + t
    if (slots[place] === 0) slots[place] = 1 + this.vectorsAt(t).take()
    return (slots[place] as number) - 1
  }

  private state(n: number, r: number, t: number, slot: number): void {
    const vectors = this.vectorsAt(t)
    vectors.trim(slot, negligible)
    const action = this.policy.actions[n]?.[r * this.policy.row + this.policy.pad + t] as number
    if (action === stop || t === 0) this.end(vectors, slot, t, 1, 0)
    else if (action === wait) {
      const later = this.problem.rules.finishFrom
      addMoved(
        vectors,
        slot,
        this.vectorsAt(later),
        this.slotAt(n, r, later),
        1,
        0,
        this.ratioAt(later) / this.ratioAt(t),
      )
    } else this.leg(this.problem.graph.nodes[n]?.legs[action] as GraphLeg, vectors, slot, r, t)
    vectors.give(slot)
    ;(this.slots[n] as Int32Array)[r * (this.problem.steps + 1) + t] = 0
  }

  /** The match ends for this vector with `amount` (coarse units) more. */
  private end(vectors: Vectors, slot: number, t: number, weight: number, amount: number): void {
    if (weight <= 0) return
    const { ratio } = this.tally.lattice
    addMoved(vectors, slot, this.final, this.out, weight, amount * ratio, ratio / this.ratioAt(t))
  }

  private leg(leg: GraphLeg, vectors: Vectors, slot: number, r: number, t: number): void {
    const { problem, tally } = this
    if (leg.to < 0) {
      const done = problem.reached[leg.id]?.[t] as number
      this.end(vectors, slot, t, done * leg.success, tally.finished(leg.points))
      this.end(vectors, slot, t, done * (1 - leg.success), tally.finished(leg.otherwise))
      this.end(vectors, slot, t, 1 - done, 0)
      return
    }
    const d = leg.goal < 0 ? -1 : (problem.rooms.dimensionOf[leg.goal] as number)
    const room = d < 0 ? leg.load : problem.rooms.room(r, d)
    const stride = d < 0 ? 0 : (problem.rooms.strides[d] as number)
    const successes = leg.goal < 0 ? Float64Array.of(1) : (problem.successes[leg.id] as Float64Array)
    const { shortest, chance } = problem.timed[leg.id] as Problem['timed'][number]
    const count = Math.min(chance.length, t - shortest + 1)
    for (let i = 0; i < count; i++) {
      const left = t - shortest - i
      for (let b = 0; b < successes.length; b++) {
        const weight = (chance[i] as number) * (successes[b] as number)
        if (weight < negligible) continue
        const placed = Math.min(b, room)
        const to = this.slotAt(leg.to, this.clip(r - placed * stride, left), left)
        const ratio = this.ratioAt(left)
        const amount = leg.goal < 0 ? 0 : tally.placed(leg, placed, left)
        addMoved(vectors, slot, this.vectorsAt(left), to, weight, amount * ratio, ratio / this.ratioAt(t))
      }
    }
    if (count < chance.length) this.unfinished(leg, vectors, slot, room, t)
  }

  /** A leg that the buzzer cuts: the pieces that counted before it stay. */
  private unfinished(leg: GraphLeg, vectors: Vectors, slot: number, room: number, t: number): void {
    if (leg.goal < 0) return this.end(vectors, slot, t, 1 - this.ended(leg, t), 0)
    const byPiece = this.pieceTimes(leg)
    for (let k = 0; k < byPiece.length; k++) {
      const before = k === 0 ? 1 : (byPiece[k - 1]?.[t] as number)
      const chance = before - (byPiece[k]?.[t] as number)
      if (chance < negligible) continue
      const successes = binomial(k, leg.success)
      for (let b = 0; b <= k; b++) {
        const amount = this.tally.placed(leg, Math.min(b, room), Math.floor(t / 4))
        this.end(vectors, slot, t, chance * (successes[b] as number), k === 0 ? 0 : amount)
      }
    }
  }

  private ended(leg: GraphLeg, t: number): number {
    return this.pieceTimes(leg)[0]?.[t] as number
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

  private clip(r: number, t: number): number {
    const { rooms } = this.problem
    if (rooms.most.length === 0) return r
    if (rooms.most.length === 1) return Math.min(r, rooms.high[0]?.[t] as number)
    return rooms.index(rooms.most.map((_, d) => Math.min(rooms.room(r, d), rooms.high[d]?.[t] as number)))
  }
}
