import type { Ground } from './ground.ts'
import { equal, type Reckoning } from './reckoning.ts'
import type { Setup } from './setup.ts'
import type { Simulator } from './simulator.ts'

/** Where the numbers of one match stand in a tally, one after the other. */
export interface Layout {
  readonly count: number
  readonly score: number
  readonly margin: number
  readonly rankingPoints: number
  readonly autoPoints: number
  readonly finishPoints: number
  readonly bonuses: number
  /** Of each hold goal and alliance: seconds held, pieces on it, and seconds in which a piece more mattered. */
  readonly held: number
  readonly heldPieces: number
  readonly marginal: number
  /** Of each robot. */
  readonly points: number
  readonly defending: number
  /** Of each robot and place. */
  readonly placed: number
  readonly waited: number
  /** Of each robot, all places together. */
  readonly waitedInAll: number
}

export function layoutOf(ground: Ground): Layout {
  let count = 0
  const next = (numbers: number) => {
    const at = count
    count += numbers
    return at
  }
  const holds = 2 * ground.holds.length
  const layout = {
    score: next(2),
    margin: next(1),
    rankingPoints: next(2),
    autoPoints: next(2),
    finishPoints: next(2),
    bonuses: next(2 * ground.game.bonuses.length),
    held: next(holds),
    heldPieces: next(holds),
    marginal: next(holds),
    points: next(6),
    defending: next(6),
    placed: next(6 * ground.count),
    waited: next(6 * ground.count),
    waitedInAll: next(6),
  }
  return { ...layout, count }
}

/** How often each whole number came up. */
export interface Counts {
  first: number
  counts: Int32Array
}

/** Sums over some matches, from which all that is reported of them follows; as long for one match as for a million. */
export interface Sums {
  matches: number
  wins: number
  ties: number
  sums: Float64Array
  squares: Float64Array
  /** Σ seconds · pieces and Σ marginal · pieces of each hold goal and alliance, for the errors of their ratios. */
  products: Float64Array
  /** Scores and margins, rounded to whole points. */
  ours: Counts
  theirs: Counts
  margins: Counts
}

/** Adds up matches. */
export class Tally {
  readonly layout: Layout
  readonly sums: Sums
  private readonly holds: number
  /** Numbers of the match at hand. */
  private readonly own: Float64Array

  constructor(setup: Setup) {
    this.layout = layoutOf(setup.ground)
    this.holds = 2 * setup.ground.holds.length
    this.own = new Float64Array(this.layout.count)
    this.sums = emptySums(this.layout.count, 2 * this.holds)
  }

  /** @throws Error where a law of conservation is broken: with the seed's replicate the match can be played again */
  add(match: Simulator, reckoning: Reckoning): void {
    const { own, layout, sums, holds } = this
    const margin = (reckoning.score[0] as number) - (reckoning.score[1] as number)
    own.set(reckoning.score, layout.score)
    own[layout.margin] = margin
    own.set(reckoning.rankingPoints, layout.rankingPoints)
    own.set(reckoning.autoPoints, layout.autoPoints)
    own.set(reckoning.finishPoints, layout.finishPoints)
    own.set(reckoning.bonuses, layout.bonuses)
    own.set(match.heldSeconds, layout.held)
    own.set(match.heldPieces, layout.heldPieces)
    own.set(match.heldMarginal, layout.marginal)
    own.set(match.points, layout.points)
    own.set(match.defended, layout.defending)
    own.set(match.placed, layout.placed)
    own.set(match.waited, layout.waited)
    const places = match.ground.count
    for (let i = 0; i < 6; i++) {
      let seconds = 0
      for (let p = 0; p < places; p++) seconds += match.waited[i * places + p] as number
      own[layout.waitedInAll + i] = seconds
    }
    for (let k = 0; k < own.length; k++) {
      const x = own[k] as number
      sums.sums[k] = (sums.sums[k] as number) + x
      sums.squares[k] = (sums.squares[k] as number) + x * x
    }
    for (let k = 0; k < holds; k++) {
      const pieces = own[layout.heldPieces + k] as number
      sums.products[k] = (sums.products[k] as number) + pieces * (own[layout.held + k] as number)
      sums.products[holds + k] = (sums.products[holds + k] as number) + pieces * (own[layout.marginal + k] as number)
    }
    sums.matches++
    if (margin > equal) sums.wins++
    else if (margin >= -equal) sums.ties++
    count(sums.ours, reckoning.score[0] as number)
    count(sums.theirs, reckoning.score[1] as number)
    count(sums.margins, margin)
  }
}

export const emptySums = (count: number, products: number): Sums => ({
  matches: 0,
  wins: 0,
  ties: 0,
  sums: new Float64Array(count),
  squares: new Float64Array(count),
  products: new Float64Array(products),
  ours: { first: 0, counts: new Int32Array(0) },
  theirs: { first: 0, counts: new Int32Array(0) },
  margins: { first: 0, counts: new Int32Array(0) },
})

/** Adds the sums of further matches to some. Always in the order of the matches: rounding then never depends on who played. */
export function addSums(into: Sums, more: Sums): void {
  into.matches += more.matches
  into.wins += more.wins
  into.ties += more.ties
  for (const key of ['sums', 'squares', 'products'] as const)
    for (let k = 0; k < into[key].length; k++) into[key][k] = (into[key][k] as number) + (more[key][k] as number)
  for (const key of ['ours', 'theirs', 'margins'] as const)
    for (const [k, n] of more[key].counts.entries()) if (n > 0) count(into[key], more[key].first + k, n)
}

function count(counts: Counts, value: number, times = 1): void {
  const whole = Math.round(value)
  let k = whole - counts.first
  if (k < 0 || k >= counts.counts.length) {
    widen(counts, whole)
    k = whole - counts.first
  }
  counts.counts[k] = (counts.counts[k] as number) + times
}

/** Room for one more value, with as much to spare as there is already. */
function widen(counts: Counts, whole: number): void {
  const { length } = counts.counts
  const spare = Math.max(32, length)
  const first =
    length === 0 ? whole - spare : Math.min(counts.first, whole < counts.first ? whole - spare : counts.first)
  const end = Math.max(counts.first + length, whole + 1 + spare)
  const wider = new Int32Array(end - first)
  if (length > 0) wider.set(counts.counts, counts.first - first)
  counts.first = first
  counts.counts = wider
}
