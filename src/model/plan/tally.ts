import { meanOf } from '../leg/pmf.ts'
import type { GraphLeg } from './graph.ts'
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
  /** Amount of `placed` pieces of a score leg that ends with t steps left, in coarse units. */
  placed(leg: GraphLeg, placed: number, t: number): number
  /** Whether that is the same however much time is left. */
  steady(leg: GraphLeg): boolean
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
    finished: () => 0,
  }
}

/** Points, without adjustments. `used` says which legs a policy ever begins. */
export function pointTally(problem: Problem, used: (leg: GraphLeg) => boolean): Tally {
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
  const each = problem.graph.legs.map((leg) =>
    leg.goal < 0 ? null : averagePay(problem, leg, problem.pays[leg.goal] as Pay).map(amountOf),
  )
  return {
    lattice,
    most: most / lattice.unit,
    fineBelow: Math.ceil(Math.max(0, ...holds.map((hold) => hold.seconds)) / problem.step),
    initial: (outcome) => amountOf(outcome.points),
    placed: (leg, placed, t) => placed * ((each[leg.id] as Float64Array)[t] as number),
    steady: (leg) => problem.pays[leg.goal]?.hold === null,
    finished: amountOf,
  }
}

/**
 * What a piece of a leg pays on average, by the time left when the leg ends. Pieces that count one by one were there before,
 * by as much as their mean times differ from the end's; which of them succeeded makes no difference to the average.
 */
function averagePay({ steps, step, timed }: Problem, leg: GraphLeg, { points, hold }: Pay): Float64Array {
  if (!hold) return new Float64Array(steps + 1).fill(points)
  const { pieces, end } = timed[leg.id] as Problem['timed'][number]
  const before = pieces.map((piece) => (meanOf(end) - meanOf(piece)) * step)
  return Float64Array.from({ length: steps + 1 }, (_, t) => {
    const seconds = before.reduce((sum, early) => sum + Math.min(hold.seconds, t * step + early), 0)
    return (hold.perSecond * seconds) / before.length
  })
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
