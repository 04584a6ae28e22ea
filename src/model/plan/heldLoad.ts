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
      const counts = countsAt(begun, this.pieces[j] as Pmf, length)
      // A piece that counted with x steps left, in a leg that ends with t left.
      for (let t = 0; t < length; t++)
        for (let x = t + first; x < length && x - t - first < mass.length; x++)
          missing[t] =
            (missing[t] as number) +
            (weight / all) * (counts[x] as number) * (mass[x - t - first] as number) * (this.most - x)
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
    const short = new Float64Array(last + 1)
    for (const [j, weight] of weights.entries())
      addConvolved(short, this.pieces[j] as Pmf, this.shortOf(k - 1 - j), { weight, from: first })
    const all = weights.reduce((sum, weight) => sum + weight, 0)
    const steps = short.map((missing, s) => this.most - within(missing / (all * (chance[s] as number)), this.most))
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

/** By time left, the chance that a piece of legs begun so counts then. */
function countsAt(begun: Float64Array, { first, mass }: Pmf, length: number): Float64Array {
  return Float64Array.from({ length }, (_, x) => {
    const last = Math.min(mass.length, begun.length - x - first)
    let sum = 0
    for (let i = 0; i < last; i++) sum += (mass[i] as number) * (begun[x + first + i] as number)
    return sum
  })
}

const within = (value: number, most: number): number => (value > 0 ? Math.min(value, most) : 0)

/** out[c] += weight · Σ_u a(c − u) · b[u], for c from `from` as far as `out` goes. */
function addConvolved(
  out: Float64Array,
  a: Pmf,
  b: Float64Array,
  { weight, from }: { weight: number; from: number },
): void {
  for (let u = 0; u < b.length; u++) {
    const factor = weight * (b[u] as number)
    if (factor < nothing) continue
    const start = a.first + u
    const end = Math.min(a.mass.length, out.length - start)
    for (let i = Math.max(0, from - start); i < end; i++)
      out[start + i] = (out[start + i] as number) + factor * (a.mass[i] as number)
  }
}
