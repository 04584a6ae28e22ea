import { negligible } from './amountRows.ts'
import { binomial } from './binomial.ts'
import type { GraphLeg } from './graph.ts'
import type { Cut } from './heldLoad.ts'
import type { Problem } from './problem.ts'
import { weighted } from './sums.ts'
import type { Tally } from './tally.ts'
import { cumulative, type TimedLeg } from './timed.ts'

/** Of one outcome among many of one state. */
const nothing = negligible / 100

/** Masses of decisions for one leg whose load finds so much room, by amount so far (fine lattice) and time left. */
interface Begun {
  readonly leg: GraphLeg
  readonly fit: number
  readonly byAmount: Map<number, Float64Array>
}

/**
 * Legs that the buzzer cuts: the pieces that counted before it stay. What the match then ends with is linear in the chances
 * to begin such a leg, so where a load counts in pieces these are gathered over all of the match, and a leg's cuts are worked out
 * once.
 */
export class Unfinished {
  private readonly problem: Problem
  private readonly tally: Tally
  /** The distribution of amounts (fine lattice) to which all that is added. */
  private readonly final: Float64Array
  private readonly cuts: Cuts[] = []
  /** By leg and room, where capacities leave a load less than it needs. */
  private readonly begun = new Map<number, Begun>()
  private readonly loads: number
  /** Successes among k pieces, by their chance and k. */
  private readonly successes = new Map<number, Float64Array[]>()

  constructor(problem: Problem, tally: Tally, final: Float64Array) {
    this.problem = problem
    this.tally = tally
    this.final = final
    this.loads = 1 + Math.max(0, ...problem.graph.legs.map(({ load }) => load))
  }

  /**
   * Notes that a leg may be begun with `at` … `at + count − 1` steps left.
   * @param fit how many pieces of its load find room
   * @param amount so far, on the fine lattice
   * @param start place of the chances in `data`
   */
  note(leg: GraphLeg, fit: number, amount: number, data: Float64Array, start: number, at: number, count: number): void {
    const { parts, last } = this.cutsOf(leg)
    if (at > last) return
    const end = Math.min(at + count - 1, last)
    if (parts.length === 1) {
      // Cut before anything counted: the amount stays.
      const place = Math.min(amount, this.final.length - 2)
      const cut = weighted(data, start, at, end - at + 1, (parts[0] as Cut).chance)
      this.final[place] = (this.final[place] as number) + cut
      return
    }
    const key = leg.id * this.loads + fit
    let begun = this.begun.get(key)
    if (!begun) {
      begun = { leg, fit, byAmount: new Map() }
      this.begun.set(key, begun)
    }
    let masses = begun.byAmount.get(amount)
    if (!masses) {
      masses = new Float64Array(last + 1)
      begun.byAmount.set(amount, masses)
    }
    for (let t = at; t <= end; t++) masses[t] = (masses[t] as number) + (data[start + t - at] as number)
  }

  /** Adds what the gathered legs end with. */
  finish(): void {
    for (const { leg, fit, byAmount } of this.begun.values())
      for (const [amount, masses] of byAmount) this.cut(leg, fit, amount, masses)
  }

  private cut(leg: GraphLeg, fit: number, amount: number, masses: Float64Array): void {
    const cuts = this.cutsOf(leg)
    let low = 0
    let high = masses.length - 1
    while (low <= high && (masses[low] as number) < negligible) low++
    while (high > low && (masses[high] as number) < negligible) high--
    const load = fit > 0 ? this.tally.held(leg) : null
    const full = leg.goal < 0 ? 0 : this.tally.placed(leg, 1, this.problem.steps)
    // Large loads bring so many amounts that a second more or less is seen in none.
    const together = Math.ceil(leg.load / 4)
    for (const [k, cut] of cuts.parts.entries()) {
      const { chance: chances, first, last } = cut
      const steps = k > 0 ? load?.cutAfter(fit, k, cut) : null
      // What pays the same however much time was left is gathered over all times, the rest over a few.
      let gathered = 0
      let few = 0
      let held = 0
      const end = Math.min(high, last)
      for (let t = Math.max(low, first); t <= end; t++) {
        const chance = (masses[t] as number) * (chances[t] as number)
        if (chance < negligible) continue
        if (!steps) gathered += chance
        else {
          few += chance
          held += chance * (steps[t] as number)
          if (t % together === 0) {
            this.partly(cuts, { k, fit, chance: few }, amount, this.tally.heldFor(leg, held / few))
            few = held = 0
          }
        }
      }
      if (few > 0) this.partly(cuts, { k, fit, chance: few }, amount, this.tally.heldFor(leg, held / few))
      if (gathered > 0) this.partly(cuts, { k, fit, chance: gathered }, amount, full)
    }
  }

  /** So many pieces of a load counted before the buzzer, the others did not; `each` that counts and finds room brings so much (coarse units). */
  private partly(cuts: Cuts, { k, fit, chance }: Counted, amount: number, each: number): void {
    const { final } = this
    cuts.successes[k] ??= binomial(k, cuts.leg.success)
    const successes = cuts.successes[k] as Float64Array
    const points = each * this.tally.lattice.ratio
    const most = final.length - 2
    // Chances rise and then fall: what is not nothing lies together.
    let within = false
    for (let b = k; b >= 0; b--) {
      const one = chance * (successes[b] as number)
      if (one < nothing) {
        if (within) break
        continue
      }
      within = true
      const place = Math.min(b, fit) * points
      const whole = Math.floor(place + 1e-6)
      const index = Math.min(amount + whole, most)
      const beyond = place - whole < 1e-6 ? 0 : one * (place - whole)
      final[index] = (final[index] as number) + one - beyond
      final[index + 1] = (final[index + 1] as number) + beyond
    }
  }

  private successesOf({ success }: GraphLeg): Float64Array[] {
    const known = this.successes.get(success) ?? []
    this.successes.set(success, known)
    return known
  }

  /** Per number of pieces that count before the buzzer, all of them left out. */
  private cutsOf(leg: GraphLeg): Cuts {
    let cuts = this.cuts[leg.id]
    if (!cuts) {
      const parts = partsOf(this.problem.timed[leg.id] as TimedLeg, this.problem.steps)
      cuts = {
        leg,
        parts,
        last: Math.max(...parts.map(({ last }) => last)),
        successes: this.successesOf(leg),
      }
      this.cuts[leg.id] = cuts
    }
    return cuts
  }
}

interface Cuts {
  readonly leg: GraphLeg
  /** By the number of pieces that count. */
  readonly parts: readonly Cut[]
  /** The most time left with which the buzzer cuts the leg at all. */
  readonly last: number
  /** Successes among k pieces: made when first asked for. */
  readonly successes: Float64Array[]
}

/** How many pieces counted, how many of a load find room, and the chance of it. */
interface Counted {
  readonly k: number
  readonly fit: number
  readonly chance: number
}

const partsByLeg = new WeakMap<TimedLeg, readonly Cut[]>()

/** The cuts of a leg by the number of pieces that count; kept with the leg, since no tally changes them. */
function partsOf(leg: TimedLeg, steps: number): readonly Cut[] {
  const known = partsByLeg.get(leg)
  if (known) return known
  const times = leg.pieces.map((piece) => cumulative(piece, steps))
  const parts = times.map((after, k) => cutOf(k === 0 ? null : (times[k - 1] as Float64Array), after))
  partsByLeg.set(leg, parts)
  return parts
}

function cutOf(before: Float64Array | null, after: Float64Array): Cut {
  const chance = after.map((p, t) => (before ? (before[t] as number) : 1) - p)
  return {
    chance,
    first: Math.max(
      0,
      chance.findIndex((p) => p >= negligible),
    ),
    last: chance.findLastIndex((p) => p >= negligible),
  }
}
