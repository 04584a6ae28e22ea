import { Workspace } from '../kernel/index.ts'
import type { Pmf } from '../leg/pmf.ts'
import { roomLeft } from './binomial.ts'
import type { Flow } from './forward.ts'
import type { GraphLeg, GraphNode } from './graph.ts'
import type { Problem } from './problem.ts'
import type { Policy } from './table.ts'
import { cumulative } from './timed.ts'

/** The chance that a leg begun with t steps left is cut after just so many pieces, and where it is more than negligible. */
export interface Cut {
  readonly chance: Float64Array
  readonly first: number
  readonly last: number
}

/** Far below what any amount shows (steps). */
const nothing = 1e-9

/** By time left (steps), the chance that a leg is begun of whose load so many pieces find room. */
export type Begun = (leg: GraphLeg, fit: number) => Float64Array

/** Begun legs as a policy has them: from what passes its decisions. */
export function begunOf(problem: Problem, policy: Policy, flow: Flow): Begun {
  const { rooms, steps, graph } = problem
  return (leg, fit) => {
    const out = new Float64Array(steps + 1)
    const node = graph.nodes[leg.from] as GraphNode
    const actions = policy.actions[leg.from] as Int16Array
    const mass = flow.mass()[leg.from] as Float64Array
    const action = node.legs.indexOf(leg)
    const d = rooms.dimensionOf[leg.goal] as number
    for (let r = 0; r < rooms.size; r++) {
      if (Math.min(leg.load, d < 0 ? leg.load : rooms.room(r, d)) !== fit) continue
      const row = r * policy.row + policy.pad
      for (let t = 0; t <= steps; t++)
        if (actions[row + t] === action) out[t] = (out[t] as number) + (mass[row + t] as number)
    }
    return out
  }
}

/**
 * How long the pieces of a load are held that count one by one, on average over a load's placed pieces: by when the leg ends, over
 * all that end then, or by when it was begun and after which piece the buzzer cut it. A piece counts before the next by a time
 * that is independent of its own, so that both follow from sums over how long a piece is held short of the most that pays.
 * Averages keep the mean of the points; what is lost is how loads differ that end at the same time.
 *
 * Times are in steps.
 */
export class HeldLoad {
  /** The most that pays. */
  readonly most: number
  private readonly leg: GraphLeg
  private readonly begun: Begun
  private readonly pieces: readonly Pmf[]
  /** between[m]: the m-th piece after a piece is so much later. */
  private readonly between: readonly Pmf[]
  private readonly ended = new Map<number, Float64Array>()
  private readonly cuts = new Map<string, Float64Array>()
  private readonly countsWhere: number[][] = []
  private readonly shorts: Float64Array[] = []

  constructor(problem: Problem, leg: GraphLeg, { most, begun }: { most: number; begun: Begun }) {
    const timed = problem.timed[leg.id] as Problem['timed'][number]
    this.most = most
    this.leg = leg
    this.begun = begun
    this.pieces = timed.pieces
    this.between = [{ first: 0, mass: Float64Array.of(1) }, ...timed.between()]
  }

  /** By time left when the leg ends, as far as it is less than the most that pays. `fit`: pieces of the load that find room. */
  finished(fit: number): Float64Array {
    const known = this.ended.get(fit)
    if (known) return known
    const begun = this.begun(this.leg, fit)
    const length = Math.min(begun.length, Math.ceil(this.most))
    const weights = this.weights(fit)
    const all = weights.reduce((sum, weight) => sum + weight, 0)
    const missing = new Float64Array(length)
    for (const [j, weight] of weights.entries()) {
      const { first, mass } = this.between[weights.length - 1 - j] as Pmf
      if (first >= length) continue
      // A piece that counted with x steps left, in a leg that ends with t left.
      const short = countsAt(begun, this.pieces[j] as Pmf, length).map((p, x) => p * (this.most - x))
      const ending = countsAt(short, { first, mass }, length)
      for (let t = 0; t < length; t++) missing[t] = (missing[t] as number) + (weight / all) * (ending[t] as number)
    }
    const ending = countsAt(begun, this.pieces.at(-1) as Pmf, length)
    const steps = missing.map((short, t) => {
      const chance = ending[t] as number
      return this.most - within(chance > 0 ? short / chance : 0, this.most - t)
    })
    this.ended.set(fit, steps)
    return steps
  }

  /** By time left when the leg was begun, where the buzzer cut it after piece k, which has a `chance` from `first` to `last`. */
  cutAfter(fit: number, k: number, { chance, first, last }: Cut): Float64Array {
    const key = `${fit} ${k}`
    const known = this.cuts.get(key)
    if (known) return known
    const weights = this.weights(fit).slice(0, k)
    const sums = new WeightedSums(first, last + 1)
    for (const [j, weight] of weights.entries()) sums.add(this.pieces[j] as Pmf, this.shortOf(k - 1 - j), weight)
    const all = weights.reduce((sum, weight) => sum + weight, 0)
    const steps = sums
      .taken()
      .map((missing, s) => this.most - within(missing / (all * (chance[s] as number)), this.most))
    this.cuts.set(key, steps)
    return steps
  }

  /** Chance that a piece is one of those that count, up to a factor: the earlier ones take the room. */
  private weights(fit: number): readonly number[] {
    const { load, success } = this.leg
    this.countsWhere[fit] ??= Array.from({ length: load }, (_, j) => roomLeft(j, success, fit))
    return this.countsWhere[fit] as number[]
  }

  /** By u, what a piece is held short of the most where the m-th after it is the last within u, with the chance of that. */
  private shortOf(m: number): Float64Array {
    if (!this.shorts[m]) {
      const before = this.chanceUpTo(m)
      const after = this.chanceUpTo(m + 1)
      this.shorts[m] = before.map((p, u) => (this.most - u) * (p - (after[u] as number)))
    }
    return this.shorts[m] as Float64Array
  }

  /** Chance that the m-th piece after a piece is at most u later, for u below the most that pays. */
  private chanceUpTo(m: number): Float64Array {
    return cumulative(this.between[m] as Pmf, Math.ceil(this.most) - 1)
  }
}

/** By time left below `length`, the chance that what begins so is over then. */
function countsAt(begun: Float64Array, { first, mass }: Pmf, length: number): Float64Array {
  const space = Workspace.borrowed()
  const values = space.take(Math.max(begun.length, first + length) + mass.length + 8)
  space.data.set(begun, values)
  const out = space.take(length + 8)
  space.kernel.correlate(out, length, space.copied(mass), mass.length, values + first, 1)
  const over = space.data.slice(out, out + length)
  space.giveBack()
  return over
}

const within = (value: number, most: number): number => (value > 0 ? Math.min(value, most) : 0)

/** Σ weight · Σ_u a(c − u) · b[u] over some pairs of a and b, for c from `from` on and below `end`; 0 before. */
class WeightedSums {
  private readonly from: number
  private readonly end: number
  private readonly space = Workspace.borrowed()
  private readonly sum: number
  private readonly one: number

  constructor(from: number, end: number) {
    this.from = from
    this.end = end
    this.sum = this.space.take(end + 8)
    this.one = this.space.take(end + 8)
  }

  add({ first, mass }: Pmf, b: Float64Array, weight: number): void {
    const { space, from, end } = this
    let low = 0
    let high = b.length
    while (low < high && weight * (b[low] as number) < nothing) low++
    while (high > low && weight * (b[high - 1] as number) < nothing) high--
    if (low === high) return
    // Zeros around the one, so that no sum has to know where it ends.
    const before = Math.max(0, first + high - 1 - from)
    const values = space.take(before + Math.max(mass.length, end - first) + 8) + before
    space.data.set(mass, values)
    const filter = space.copied(b.subarray(low, high))
    const { kernel } = space
    kernel.correlate(this.one, end - from, filter, high - low, values + from - first - low, -1)
    kernel.addScaled(this.sum + from, this.one, end - from, weight)
  }

  /** To be asked for last. */
  taken(): Float64Array {
    const { space, sum, end } = this
    const out = space.data.slice(sum, sum + end)
    space.giveBack()
    return out
  }
}
