import type { ChanceData } from './chances.ts'
import type { Measures, TeamData } from './teamData.ts'
import { earlierTrips } from './tripData.ts'
import { evenly, type Weighing } from './weights.ts'

type Mean = { readonly mean: number }
type Means = { readonly [id: string]: Mean }

/** What of an estimate is taken along to another event: means of one match unless said otherwise. */
export interface PastEstimate {
  /** Own matches behind it. */
  matches: number
  goals: { readonly [goal: string]: { readonly attempts: Mean; readonly success: Mean } }
  /** Median (s), and spreads as geometric standard deviations; null where no trip was timed. */
  trip: {
    readonly time: { readonly median: Mean; readonly within: Mean }
    readonly form: Mean
    /** Share of trips by number of pieces. */
    readonly pieces: Means
  } | null
  finish: Means
  absent: Mean
  stops: Mean
}

/** A team's estimate after an earlier event, and what each of the matches behind it counts now, 0 … 1. */
export interface EarlierEstimate {
  estimate: PastEstimate
  discount: number
}

/**
 * How many of its own matches an earlier estimate stands for: those behind it, each with its discount, once more by the usual
 * one for every change of the robot since, and by its age where ages count.
 */
export function matchesWorth(
  { estimate: { matches }, discount }: EarlierEstimate,
  { own, era, weighing = evenly }: { own: number; era: number; weighing?: Weighing | undefined },
): number {
  const each = discount * weighing.discount ** era
  let sum = 0
  for (let age = own; age < own + matches; age++) sum += each * 2 ** (-age / weighing.halfLife)
  return sum
}

/**
 * Adds to a team's numbers the matches behind an earlier estimate, as if each had been what is estimated. Its mean is drawn to that
 * event's others already and will be drawn to this one's, so that a good team is thought of somewhat too carefully and never
 * too boldly. What an estimate does not tell by goal, pieces in autonomous, and departures are not taken along.
 *
 * @param worth of so many own matches
 */
export function addEarlier(data: TeamData, estimate: PastEstimate, measures: Measures, worth: number): void {
  if (!(worth > 0)) return
  const { goals, finishes, dispersion, ofGoals, ofHits, perTrip, mostPerTrip, teleop, usual } = measures
  const { trip, absent, stops } = estimate
  const add = (chance: ChanceData, n: number, share: number) => {
    chance.hits += n * share
    chance.misses += n * (1 - share)
  }
  const came = worth * (1 - absent.mean)
  add(data.absent, worth, absent.mean)
  add(data.stops, came, stops.mean)
  const tried = goals.map((goal) => estimate.goals[goal]?.attempts.mean ?? 0)
  const all = tried.reduce((sum, n) => sum + n, 0)
  data.attempts.count += (came * all) / dispersion
  data.attempts.exposure += (came * (teleop - data.departing.mean)) / usual / dispersion
  const shares = Object.entries(trip?.pieces ?? {}).map(([n, { mean }]) => ({ n: Number(n), mean }))
  const perOwn = shares.reduce((sum, { n, mean }) => sum + n * mean, 0)
  const piecesOfTrip = perOwn > 0 ? perOwn : Math.max(perTrip, dispersion, 1)
  for (const [k, goal] of goals.entries()) {
    data.goals[k]! += (came * tried[k]!) / piecesOfTrip / ofGoals
    add(data.success[k]!, (came * tried[k]!) / ofHits, estimate.goals[goal]?.success.mean ?? 0)
  }
  const ending = came * (1 - stops.mean)
  for (const [k, id] of finishes.entries()) data.finish[k]! += ending * (estimate.finish[id]?.mean ?? 0)
  // The trip with what it holds at the start is none that was timed.
  const trips = Math.max(0, all / piecesOfTrip - 1)
  for (const { n, mean } of shares)
    if (n >= 1) data.pieces[Math.min(mostPerTrip, Math.round(n)) - 1]! += came * trips * mean
  if (!trip || trips <= 0 || trip.time.median.mean <= 0) return
  const [within, form] = [Math.log(trip.time.within.mean), Math.log(trip.form.mean)]
  data.trips.push(
    earlierTrips(Math.log(trip.time.median.mean), came / Math.max(1e-4, (within * within) / trips + form * form)),
  )
}
