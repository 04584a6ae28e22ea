import type { GraphLeg } from './graph.ts'
import { type Begun, HeldLoad } from './heldLoad.ts'
import { type Lattice, latticeFor } from './lattice.ts'
import type { Problem } from './problem.ts'
import type { Pay } from './timed.ts'

/** What is counted along the match: points, or the pieces on one goal. Amounts are in lattice units. */
export interface Tally {
  readonly lattice: Lattice
  /** Greatest amount that can be reached, in coarse units. */
  readonly most: number
  /** Time left (steps) below which amounts depend on it, and the fine lattice is used. */
  readonly fineBelow: number
  /** Amount that autonomous brings. */
  initial(outcome: { points: number }): number
  /** Amount of `placed` pieces that count when their score leg ends, with t steps left, in coarse units. */
  placed(leg: GraphLeg, placed: number, t: number): number
  /** Whether that is the same however much time is left. */
  steady(leg: GraphLeg): boolean
  /** A load whose pieces count one by one and are held; null for any other, of which `placed` tells all. */
  held(leg: GraphLeg): HeldLoad | null
  /** Amounts of its pieces that find room, each on average, by the time left when the leg ends, in coarse units. */
  heldEach(leg: GraphLeg, fit: number): Float64Array | null
  /** Amount of one piece held for so many steps, in coarse units. */
  heldFor(leg: GraphLeg, steps: number): number
  /** Amount of a finish that earns `points`. */
  finished(points: number): number
}

/** Pieces placed on one goal in teleop. */
export function pieceTally(problem: Problem, goal: number): Tally {
  const most = mostOf(problem, (leg) => (leg.goal === goal ? leg.load : 0), 0)
  const capacity = problem.graph.goals[goal]?.capacity ?? Number.POSITIVE_INFINITY
  return {
    lattice: { unit: 1, ratio: 1, rounded: false },
    most: Math.min(most, capacity),
    fineBelow: 0,
    initial: () => 0,
    placed: (leg, placed) => (leg.goal === goal ? placed : 0),
    steady: () => true,
    held: () => null,
    heldEach: () => null,
    heldFor: () => 0,
    finished: () => 0,
  }
}

/** Points, without adjustments. `used` says which legs a policy ever begins, `begun` how often. */
export function pointTally(problem: Problem, used: (leg: GraphLeg) => boolean, begun: Begun): Tally {
  const legs = problem.graph.legs.filter(used)
  const pays = legs.filter((leg) => leg.goal >= 0).map((leg) => problem.pays[leg.goal] as Pay)
  const holds = pays.flatMap((pay) => (pay.hold && pay.points > 0 ? [pay.hold] : []))
  const finishes = legs.filter((leg) => leg.to < 0).flatMap((leg) => [leg.points, leg.otherwise])
  const auto = problem.autonomous.outcomes.map((outcome) => outcome.points)
  const most =
    Math.max(...auto) +
    mostOf(
      problem,
      (leg) => (leg.goal < 0 ? 0 : leg.load * (problem.pays[leg.goal] as Pay).points),
      Math.max(0, ...finishes),
    )
  const values = [...pays.map((pay) => pay.points), ...finishes, ...auto]
  const lattice = latticeFor(
    values,
    holds.map((hold) => hold.perSecond * problem.step),
    most,
  )
  const amountOf = (points: number) => (lattice.rounded ? Math.round(points / lattice.unit) : points / lattice.unit)
  const each = problem.pays.map((pay) => payAtEnd(problem, pay).map(amountOf))
  const loads = new Map<number, HeldLoad>()
  const held = (leg: GraphLeg): HeldLoad | null => {
    const hold = leg.goal < 0 ? null : (problem.pays[leg.goal] as Pay).hold
    if (!hold || (problem.timed[leg.id] as Problem['timed'][number]).pieces.length < 2) return null
    const load = loads.get(leg.id) ?? new HeldLoad(problem, leg, { most: hold.seconds / problem.step, begun })
    loads.set(leg.id, load)
    return load
  }
  const heldFor = (leg: GraphLeg, steps: number) =>
    amountOf((problem.pays[leg.goal]?.hold?.perSecond ?? 0) * steps * problem.step)
  const eachOf = new Map<Float64Array, Float64Array>()
  const heldEach = (leg: GraphLeg, fit: number): Float64Array | null => {
    const steps = held(leg)?.finished(fit)
    if (!steps) return null
    const amounts = eachOf.get(steps) ?? steps.map((many) => heldFor(leg, many))
    eachOf.set(steps, amounts)
    return amounts
  }
  return {
    lattice,
    most: most / lattice.unit,
    fineBelow: Math.ceil(Math.max(0, ...holds.map((hold) => hold.seconds)) / problem.step),
    initial: (outcome) => amountOf(outcome.points),
    placed: (leg, placed, t) => placed * ((each[leg.goal] as Float64Array)[t] as number),
    steady: (leg) => problem.pays[leg.goal]?.hold === null,
    held,
    heldEach,
    heldFor,
    finished: amountOf,
  }
}

/** What a piece pays that counts when its leg ends, by the time left then. */
function payAtEnd({ steps, step }: Problem, { points, hold }: Pay): Float64Array {
  if (!hold) return new Float64Array(steps + 1).fill(points)
  return new Float64Array(steps + 1).map((_, t) => hold.perSecond * Math.min(hold.seconds, t * step))
}

/** A bound on what legs could bring in the time there is: the best leg as often as the shortest trips fit, and a finish. */
function mostOf(problem: Problem, amount: (leg: GraphLeg) => number, finish: number): number {
  const { graph, steps, timed } = problem
  let best = 0
  let score = steps + 1
  let collect = steps + 1
  for (const leg of graph.legs) {
    if (leg.to < 0) continue
    const { shortest, pieces } = timed[leg.id] as Problem['timed'][number]
    best = Math.max(best, amount(leg))
    if (leg.goal >= 0) score = Math.min(score, pieces[0]?.first as number)
    else collect = Math.min(collect, shortest)
  }
  const trips = score > steps ? 0 : 1 + Math.floor((steps - score) / (score + collect))
  return best * trips + finish
}
