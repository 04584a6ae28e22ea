import type { Pmf } from '../leg/pmf.ts'
import { roomLeft } from './binomial.ts'
import type { GraphLeg } from './graph.ts'
import type { Problem } from './problem.ts'
import { cumulative } from './timed.ts'

/**
 * How long the pieces of a load are held that count one by one, on average over a load's placed pieces: given when the leg was
 * begun and when it ended, or after which piece the buzzer cut it. A piece counts before the next by a time that is
 * independent of its own, so that both follow from sums over how long a piece is held short of the most that pays. Averages keep
 * the mean of the points; what is lost is how pieces of one load differ.
 *
 * Times are in steps.
 */
export class HeldLoad {
  /** The most that pays. */
  readonly most: number
  private readonly steps: number
  private readonly leg: GraphLeg
  private readonly pieces: readonly Pmf[]
  /** between[m]: the m-th piece after a piece is so much later. */
  private readonly between: readonly Pmf[]
  /** By room and time left: what a leg that takes c steps falls short, times the chance that it takes so long. */
  private readonly ended = new Map<string, Float64Array>()
  private readonly cuts = new Map<string, Float64Array>()

  constructor(problem: Problem, leg: GraphLeg, most: number) {
    const { pieces, between } = problem.timed[leg.id] as Problem['timed'][number]
    this.most = most
    this.leg = leg
    this.steps = problem.steps
    this.pieces = pieces
    this.between = [{ first: 0, mass: Float64Array.of(1) }, ...between()]
  }

  /**
   * By time left t when the leg ends, up to the most that pays, where legs were begun with `at` … `at + count − 1` steps left.
   * @param fit pieces of the load that find room
   * @param start place in `data` of the chances to begin
   */
  finished(fit: number, data: Float64Array, start: number, at: number, count: number): Float64Array {
    const end = this.pieces.at(-1) as Pmf
    return Float64Array.from({ length: Math.ceil(this.most) }, (_, t) => {
      const short = this.endedWith(fit, t)
      let [missing, ending] = [0, 0]
      for (let i = 0; i < count; i++) {
        const takes = at + i - t
        if (takes < 0) continue
        const begun = data[start + i] as number
        missing += begun * (short[takes] as number)
        ending += begun * massAt(end, takes)
      }
      return this.most - within(ending > 0 ? missing / ending : 0, this.most - t)
    })
  }

  /** By time left when the leg was begun, where the buzzer cut it after piece k. */
  cutAfter(fit: number, k: number, chance: Float64Array): Float64Array {
    const key = `${fit} ${k}`
    const known = this.cuts.get(key)
    if (known) return known
    const weights = this.weights(fit).slice(0, k)
    const short = new Float64Array(chance.length)
    for (const [j, weight] of weights.entries()) {
      const before = this.chanceUpTo(k - 1 - j)
      const after = this.chanceUpTo(k - j)
      const cut = before.map((p, u) => (this.most - u) * (p - (after[u] as number)))
      addConvolved(short, this.pieces[j] as Pmf, { first: 0, mass: cut }, weight)
    }
    const all = weights.reduce((sum, weight) => sum + weight, 0)
    const seconds = short.map((missing, s) => this.most - within(missing / (all * (chance[s] as number)), this.most))
    this.cuts.set(key, seconds)
    return seconds
  }

  private endedWith(fit: number, t: number): Float64Array {
    const key = `${fit} ${t}`
    const known = this.ended.get(key)
    if (known) return known
    const short = new Float64Array(this.steps + 1)
    const weights = this.weights(fit)
    const all = weights.reduce((sum, weight) => sum + weight, 0)
    for (const [j, weight] of weights.entries()) {
      const { first, mass } = this.between[weights.length - 1 - j] as Pmf
      const kept = Math.max(0, Math.ceil(this.most - t) - first)
      const missing = mass.slice(0, kept).map((p, i) => p * (this.most - t - first - i))
      addConvolved(short, this.pieces[j] as Pmf, { first, mass: missing }, weight / all)
    }
    this.ended.set(key, short)
    return short
  }

  /** Chance that a piece is one of those that count, up to a factor: the earlier ones take the room. */
  private weights(fit: number): number[] {
    const { load, success } = this.leg
    return Array.from({ length: load }, (_, j) => roomLeft(j, success, fit))
  }

  /** Chance that the m-th piece after a piece is at most u later, for u below the most that pays. */
  private chanceUpTo(m: number): Float64Array {
    return cumulative(this.between[m] as Pmf, Math.ceil(this.most) - 1)
  }
}

const massAt = ({ first, mass }: Pmf, at: number): number => mass[at - first] ?? 0

const within = (value: number, most: number): number => (value > 0 ? Math.min(value, most) : 0)

/** out[c] += weight · Σ_u a(c − u) · b(u), as far as `out` goes. */
function addConvolved(out: Float64Array, a: Pmf, b: Pmf, weight: number): void {
  for (const [u, own] of b.mass.entries()) {
    const factor = weight * own
    if (factor === 0) continue
    const from = a.first + b.first + u
    const count = Math.min(a.mass.length, out.length - from)
    for (let i = 0; i < count; i++) out[from + i] = (out[from + i] as number) + factor * (a.mass[i] as number)
  }
}
