import { distributionOf } from '../duration/index.ts'
import { type LegBuilder, type LegTimes, wholeTrip } from '../leg/builder.ts'
import type { Pmf } from '../leg/pmf.ts'
import { bestPolicy } from './backward.ts'
import { type Floor, floorOf, negligible, tolerated } from './floor.ts'
import { flowValue, valueAlong } from './forward.ts'
import type { GraphLeg } from './graph.ts'
import type { Solved } from './planner.ts'
import { atForm, moved } from './problem.ts'
import { startValue } from './table.ts'
import { type TimedLeg, timedLeg } from './timed.ts'
import type { Worth } from './types.ts'

/** By how much a stage is moved either way (s), or half its mean if that is less. */
const most = 0.5

/**
 * What a second of each stage is worth: [V(stage − δ) − V(stage + δ)] / 2δ, every draw of the stage moved by δ in all
 * legs and loads of its trip at once, from two full solves. (The envelope theorem would need one forward pass only,
 * but is off by up to 40 % at half a second and by more than twice where a stage is done once per piece: a stage is
 * part of every trip, and ten trips together change what fits into the match.) A trip given whole is one stage, `whole`.
 */
export const worthOf = (solved: Solved, builder: LegBuilder): Worth[] => joinedWorth([worthShare(solved, builder)])

/** Worth of the stages of one trip; `trip` orders the trips. */
export interface TripWorth {
  trip: number
  worth: Worth[]
}

/** Some of the trips: those that share `at` of `of` is dealt, the longest trips first, so that shares take about as long. */
export interface WorthShare {
  at: number
  of: number
}

/** What `worthOf` finds of some trips; `joinedWorth` puts shares together. */
export function worthShare(solved: Solved, builder: LegBuilder, share: WorthShare = { at: 0, of: 1 }): TripWorth[] {
  const floor = floorOf(solved)
  return dealt(byTrip(solved.problem.graph.legs), share).map(({ trip, legs }) => ({
    trip,
    worth: worthOfTrip(solved, builder, { legs, floor }),
  }))
}

export const joinedWorth = (shares: readonly (readonly TripWorth[])[]): Worth[] =>
  shares
    .flat()
    .sort((a, b) => a.trip - b.trip)
    .flatMap(({ worth }) => worth)

function dealt(trips: readonly GraphLeg[][], { at, of }: WorthShare): { trip: number; legs: GraphLeg[] }[] {
  const stages = ([leg]: GraphLeg[]) => (leg && 'stages' in leg.spec.trip ? leg.spec.trip.stages.length : 1)
  const loads = new Array<number>(of).fill(0)
  const own: { trip: number; legs: GraphLeg[] }[] = []
  const longestFirst = trips.map((legs, trip) => ({ legs, trip })).sort((a, b) => stages(b.legs) - stages(a.legs))
  for (const each of longestFirst) {
    const lightest = loads.indexOf(Math.min(...loads))
    loads[lightest] = (loads[lightest] as number) + stages(each.legs)
    if (lightest === at) own.push(each)
  }
  return own
}

function worthOfTrip(
  solved: Solved,
  builder: LegBuilder,
  { legs, floor }: { legs: readonly GraphLeg[]; floor: Floor | null },
): Worth[] {
  const { spec, worth } = legs[0] as GraphLeg
  const stages = 'stages' in spec.trip ? spec.trip.stages : [{ id: wholeTrip, duration: spec.trip.whole }]
  const out: Worth[] = []
  const used = legs.some((leg) => isUsed(solved, leg))
  const found: Found[] = [{ times: legs.map(({ spec, key }) => builder.times(spec, key)), value: valueAsIs(solved) }]
  for (const stage of stages) {
    const delta = Math.min(most, distributionOf(stage.duration).mean / 2)
    const value = (seconds: number) => {
      const shift = { stage: stage.id, seconds }
      const times = legs.map(({ spec, key }) => builder.times({ ...spec, shift }, key))
      const known = found.find((other) => sameTimes(other.times, times, builder.perStep))
      if (known) return known.value
      const fresh = { times, value: valueWith(solved, builder, { legs, times, slower: seconds > 0 }, floor) }
      found.push(fresh)
      return fresh.value
    }
    // A leg that the plan does not use stays unused when it gets slower.
    const slower = () => (used ? value(delta) : valueAsIs(solved))
    out.push({
      leg: worth,
      stage: stage.id,
      pointsPerSecond: delta > 0 ? (value(-delta) - slower()) / (2 * delta) : 0,
    })
  }
  return out
}

function byTrip(legs: readonly GraphLeg[]): GraphLeg[][] {
  const groups = new Map<string, GraphLeg[]>()
  for (const leg of legs) {
    const key = JSON.stringify(leg.worth)
    const group = groups.get(key) ?? []
    group.push(leg)
    groups.set(key, group)
  }
  return [...groups.values()]
}

/** Whether any form's play ever begins the leg. */
function isUsed(solved: Solved, leg: GraphLeg): boolean {
  const action = solved.problem.graph.nodes[leg.from]?.legs.indexOf(leg)
  const actions = solved.table.actions[leg.from] as Int16Array
  return solved.forms.some((run) =>
    run.flow.mass()[leg.from]?.some((mass, place) => mass > 0 && actions[place] === action),
  )
}

const valueAsIs = (solved: Solved): number =>
  solved.forms.length === 1
    ? startValue(solved.problem, solved.table)
    : solved.forms.reduce((sum, run) => sum + run.weight * flowValue(run.flow), 0)

/** What the option is worth with these times of a trip's legs. */
interface Found {
  times: readonly LegTimes[]
  value: number
}

/**
 * Whether two moves give a trip's legs the same times, so that they need not be planned twice: a stage that always waits for
 * another moves nothing, and of two stages that follow each other it does not matter which is slower.
 */
const sameTimes = (a: readonly LegTimes[], b: readonly LegTimes[], ratio: number): boolean =>
  a.every((one, i) => {
    const other = b[i] as LegTimes
    if (one === other) return true
    const pieces = one.pieces ?? []
    return (
      same(one.end.onGrid(ratio, 1), other.end.onGrid(ratio, 1)) &&
      pieces.every((piece, k) => same(piece.onGrid(ratio, 1), other.pieces?.[k]?.onGrid(ratio, 1) as Pmf))
    )
  })

/** Far below what any value shows, and above what rounding leaves of one product in another order. */
const rounding = 1e-13

function same(a: Pmf, b: Pmf): boolean {
  if (a.first !== b.first) return false
  const points = Math.max(a.mass.length, b.mass.length)
  for (let i = 0; i < points; i++) if (Math.abs((a.mass[i] ?? 0) - (b.mass[i] ?? 0)) > rounding) return false
  return true
}

/** Legs with other times than in the plan as it is. */
interface Changed {
  legs: readonly GraphLeg[]
  times: readonly LegTimes[]
  slower: boolean
}

function valueWith(solved: Solved, builder: LegBuilder, changed: Changed, floor: Floor | null): number {
  const timesAt = (timed: readonly TimedLeg[], factor: number) => {
    const out = [...timed]
    for (const [i, leg] of changed.legs.entries()) out[leg.id] = timedLeg(leg, builder, factor, changed.times[i])
    return out
  }
  const times = timesAt(solved.problem.timed, 1)
  // What is slower needs no more room than the plan as it is.
  const problem = changed.slower ? atForm(solved.problem, times, solved.problem) : moved(solved.problem, times)
  const { policy, value } = bestPolicy(problem, problem.rules, floor)
  let sum = 0
  let below = 0
  // What quicker forms meet below the floor; form 1, which gets less far, is followed where there are none, or they met some.
  let quicker = Number.POSITIVE_INFINITY
  for (const run of solved.forms) {
    const asPlanned = run.factor === 1
    if (asPlanned && (!floor || quicker <= negligible)) {
      sum += run.weight * value
      continue
    }
    const own = asPlanned ? problem : atForm(problem, timesAt(run.problem.timed, run.factor), run.problem)
    const along = valueAlong(own, policy, floor)
    quicker = along.below
    below += run.weight * along.below
    // The moved plan goes where the plan as it is never was, of which the floor makes too much: once more, with all rooms.
    if (below > tolerated) return valueWith(solved, builder, changed, null)
    sum += run.weight * (asPlanned ? value : along.value)
  }
  return sum
}
