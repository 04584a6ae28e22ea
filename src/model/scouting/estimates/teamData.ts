import type { Game } from '../../documents/types.ts'
import { attemptsOf, type GoalCounts, type SeenTeleop, type TeamMatch } from '../seen/index.ts'
import type { PitVisit } from '../types.ts'
import type { ChanceData } from './chances.ts'
import { type ClaimedData, claimsOf } from './claims.ts'
import type { Departing } from './departure.ts'
import { type CountGroup, countDispersion, shareDispersion } from './dispersion.ts'
import { addEarlier, type PastEstimate } from './earlier.ts'
import type { RateData } from './rates.ts'
import { type TripTeam, tripData } from './tripData.ts'
import type { Weighted } from './weights.ts'

/**
 * Of a whole match, what a match must have been seen for its pieces to say how much matches differ: what a robot holds at the start
 * and the trip that a stop cuts off are most of a short one, so that few stops made steady robots look twice as unsteady.
 */
const mostlySeen = 0.5

/** Most pieces of a trip, and of a goal in autonomous, that are told apart. */
const mostPieces = 12

/** What of an event does not belong to one team. */
export interface Measures {
  goals: readonly string[]
  /** Ids, and `none` at the end. */
  finishes: readonly string[]
  teleop: number
  /** Of teleop, to the departure that is usual at the event (s). */
  usual: number
  /** Variance over mean of pieces from match to match; the same of shares among goals, and of hits. */
  dispersion: number
  ofGoals: number
  ofHits: number
  /** Pieces of a trip, on average and at most; and of a goal in autonomous at most. */
  perTrip: number
  mostPerTrip: number
  mostInAuto: number
}

/** A team's numbers, weighted and divided by what they vary more than chance. */
export interface TeamData extends ClaimedData {
  attempts: RateData
  goals: Float64Array
  success: ChanceData[]
  pieces: Float64Array
  finish: Float64Array
  autonomous: Float64Array[]
  absent: ChanceData
  stops: ChanceData
  leaves: ChanceData
  trips: TripTeam
  departing: Departing
  defence: number | null
}

const triedAt = (counts: GoalCounts, goal: string) => {
  const own = counts[goal]
  return own ? own.scored + own.missed : 0
}

/** Sums of one match that hang on nothing else. Pieces tried, weights of trips, and pieces of trips by their weights and at most. */
interface Sums {
  pieces: number
  trips: number
  ofTrips: number
  most: number
}

const known = new WeakMap<SeenTeleop, Sums>()

/** Added up once: a further record leaves the matches of all other teams as they were. */
function sumsOf(teleop: SeenTeleop): Sums {
  const before = known.get(teleop)
  if (before) return before
  const sums: Sums = { pieces: attemptsOf(teleop.goals), trips: 0, ofTrips: 0, most: 1 }
  for (const { goals, weight } of teleop.trips) {
    const n = attemptsOf(goals)
    sums.trips += weight
    sums.ofTrips += weight * n
    sums.most = Math.max(sums.most, Math.round(n))
  }
  known.set(teleop, sums)
  return sums
}

export function measuresOf(
  game: Game,
  none: string,
  { teams, departing }: { teams: readonly (readonly Weighted[])[]; departing: readonly Departing[] },
): Measures {
  const goals = game.goals.map(({ id }) => id)
  const { teleop } = game.clock
  const usual = teleop - departing.reduce((sum, { mean }) => sum + mean, 0) / Math.max(1, departing.length)
  let [trips, pieces, mostPerTrip, mostInAuto] = [0, 0, 1, 1]
  for (const team of teams)
    for (const { seen } of team) {
      if (seen.teleop) {
        const sums = sumsOf(seen.teleop)
        trips += sums.trips
        pieces += sums.ofTrips
        mostPerTrip = Math.max(mostPerTrip, sums.most)
      }
      for (const goal of goals) mostInAuto = Math.max(mostInAuto, Math.round(seen.autonomous?.[goal]?.scored ?? 0))
    }
  const half: Measures = {
    goals,
    finishes: [...game.finishes.map(({ id }) => id), none],
    teleop,
    usual: Math.max(1, usual),
    dispersion: 1,
    ofGoals: 1,
    ofHits: 1,
    perTrip: trips > 0 ? Math.max(1, pieces / trips) : 1,
    mostPerTrip: Math.min(mostPieces, mostPerTrip),
    mostInAuto: Math.min(mostPieces, mostInAuto),
  }
  const stretches = teams.flatMap((team, t) => alike(team).map((matches) => ({ matches, departing: departing[t]! })))
  const counts = stretches.map(
    ({ matches, departing }): CountGroup =>
      matches.flatMap(({ seen }) => {
        const exposure = exposureOf(seen, half, departing)
        return exposure > mostlySeen ? [{ count: sumsOf(seen.teleop!).pieces, exposure }] : []
      }),
  )
  const dispersion = countDispersion(counts)
  const sharing = { ...half, dispersion }
  const hits = stretches.flatMap(({ matches }) =>
    goals.map((goal) =>
      matches.map(({ seen }) => {
        const own = seen.teleop?.goals[goal]
        return Float64Array.of(own?.scored ?? 0, own?.missed ?? 0)
      }),
    ),
  )
  return {
    ...sharing,
    ofGoals: shareDispersion(stretches.map(({ matches }) => matches.map(({ seen }) => tripsByGoal(seen, sharing)))),
    ofHits: shareDispersion(hits),
  }
}

/** Matches of this event, apart by what the robot was then. */
function alike(team: readonly Weighted[]): Weighted[][] {
  const stretches = new Map<number, Weighted[]>()
  for (const match of team) {
    if (!match.here) continue
    const own = stretches.get(match.steps)
    if (own) own.push(match)
    else stretches.set(match.steps, [match])
  }
  return [...stretches.values()]
}

/** Of how many whole matches it was seen. */
export function exposureOf({ teleop }: TeamMatch, { usual }: Measures, { mean }: Departing): number {
  if (!teleop) return 0
  const active =
    teleop.departed === 'unknown' ? Math.min(teleop.active, Math.max(0, teleop.active - mean)) : teleop.active
  return active / usual
}

/** Trips by goal, a trip to several shared by its pieces; where no trips were noted, pieces over those of a usual trip. */
function tripsByGoal({ teleop }: TeamMatch, { goals, perTrip, dispersion }: Measures): Float64Array {
  const counts = new Float64Array(goals.length)
  if (!teleop) return counts
  const { pieces, trips } = sumsOf(teleop)
  const each = trips > 0 && pieces > 0 ? trips / pieces : 1 / Math.max(perTrip, dispersion, 1)
  for (const [k, goal] of goals.entries()) counts[k] = each * triedAt(teleop.goals, goal)
  return counts
}

/** What is known of a team beside what was seen of it here. */
interface TeamSays {
  departing: Departing
  claims?: PitVisit['claims'] | undefined
  /** Its estimate after an earlier event, and of how many own matches that is worth. */
  earlier?: PastEstimate | undefined
  worth?: number
}

export function teamData(
  matches: readonly Weighted[],
  measures: Measures,
  { departing, claims, earlier, worth = 0 }: TeamSays,
): TeamData {
  const { goals, finishes, dispersion, ofGoals, ofHits, mostPerTrip, mostInAuto } = measures
  const data: TeamData = {
    attempts: { count: 0, exposure: 0 },
    goals: new Float64Array(goals.length),
    success: goals.map(() => ({ hits: 0, misses: 0 })),
    pieces: new Float64Array(mostPerTrip),
    finish: new Float64Array(finishes.length),
    autonomous: goals.map(() => new Float64Array(mostInAuto + 1)),
    absent: { hits: 0, misses: 0 },
    stops: { hits: 0, misses: 0 },
    leaves: { hits: 0, misses: 0 },
    trips: tripData(matches),
    departing,
    defence: null,
    ...claimsOf(claims, measures),
  }
  let [defended, watched] = [0, 0]
  for (const { seen, weight } of matches) {
    data.absent[seen.absent ? 'hits' : 'misses'] += weight
    if (seen.left !== null) data.leaves[seen.left ? 'hits' : 'misses'] += weight
    if (seen.autonomous)
      for (const [k, goal] of goals.entries())
        addNumber(data.autonomous[k] as Float64Array, seen.autonomous[goal]?.scored ?? 0, weight)
    if (seen.finish && !seen.stopped) {
      const k = seen.finish.achieved === null ? finishes.length - 1 : finishes.indexOf(seen.finish.achieved)
      if (k >= 0) data.finish[k]! += weight
    }
    const { teleop } = seen
    if (!teleop) continue
    data.stops[seen.stopped ? 'hits' : 'misses'] += weight
    defended += weight * teleop.defence.played
    watched += weight
    data.attempts.count += (weight * sumsOf(teleop).pieces) / dispersion
    data.attempts.exposure += (weight * exposureOf(seen, measures, departing)) / dispersion
    for (const [k, count] of tripsByGoal(seen, measures).entries()) data.goals[k]! += (weight * count) / ofGoals
    for (const [k, goal] of goals.entries()) {
      const own = data.success[k] as ChanceData
      own.hits += (weight * (teleop.goals[goal]?.scored ?? 0)) / ofHits
      own.misses += (weight * (teleop.goals[goal]?.missed ?? 0)) / ofHits
    }
    for (const trip of teleop.trips)
      if (!trip.first) addNumber(data.pieces, attemptsOf(trip.goals) - 1, weight * trip.weight)
  }
  if (earlier) addEarlier(data, earlier, measures, worth)
  return { ...data, defence: watched > 0 ? defended / watched : null }
}

/** A number, which averages make a fraction, shared between its neighbours. */
function addNumber(counts: Float64Array, number: number, weight: number): void {
  const within = Math.min(counts.length - 1, Math.max(0, number))
  const below = Math.floor(within)
  counts[below]! += weight * (1 - (within - below))
  if (within > below) counts[below + 1]! += weight * (within - below)
}
