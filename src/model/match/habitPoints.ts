import erfc from '@stdlib/math-base-special-erfc'
import type { Habit, HabitDraw } from '../documents/habit.ts'
import type { Duration, FinishTrip, Game, Goal, Option, Trip } from '../documents/types.ts'
import { distributionOf } from '../duration/index.ts'
import { autonomousOf } from '../plan/autonomous.ts'
import { formNodes } from '../plan/form.ts'
import type { ExpectedPoints } from '../plan/types.ts'

/** Mean and mean square of a time (s, s²). */
interface Moments {
  mean: number
  square: number
}

/** What a trip to one goal takes and brings, of form 1. */
interface GoalTrip {
  goal: Goal
  share: number
  collect: Moments
  score: Moments
  /** Pieces placed in a trip, with success. */
  placed: number
  /** The same of what the robot begins with; 0 where the goal does not take it. */
  preloaded: number
}

/**
 * Expected points of an observed robot that nobody hinders: its habit's trips one after the other, then its finish. A closed
 * form to order line-ups and to regress scores on, where the simulation says what is played. How many trips begin in a time
 * is that of a renewal process, m(t) ≈ t/μ + (σ² − μ²)/2μ²; a full goal, an empty source and fouls are left out.
 *
 * Null for a robot whose legs are not all whole times.
 *
 * Source: Feller, An Introduction to Probability Theory and Its Applications II (2nd ed. 1971), section XI.3.
 */
export function habitPoints(game: Game, option: Option): ExpectedPoints | null {
  const { habit, form } = option.robot
  if (!habit || !allWhole(option)) return null
  const draws = habit.draws && habit.draws.length > 0 ? habit.draws : [{}]
  const parts = draws.flatMap((draw) => {
    const known = knownOf(game, option, { habit, draw })
    return formNodes(draw.form ?? form.spread).map(({ factor, weight }) => ({
      weight: weight / draws.length,
      points: pointsAt(game, option, { known, factor: factor * (draw.time ?? 1) }),
    }))
  })
  const goals: ExpectedPoints['goals'] = {}
  const finishes: ExpectedPoints['finishes'] = {}
  for (const { weight, points } of parts) {
    for (const [id, own] of Object.entries(points.goals)) {
      const before = goals[id] ?? { pieces: 0, points: 0 }
      goals[id] = { pieces: before.pieces + weight * own.pieces, points: before.points + weight * own.points }
    }
    for (const [id, own] of Object.entries(points.finishes)) {
      const before = finishes[id] ?? { attempts: 0, points: 0 }
      finishes[id] = { attempts: before.attempts + weight * own.attempts, points: before.points + weight * own.points }
    }
  }
  const autonomous = autonomousOf(game, option, game.goals).expected
  const adjust = option.adjust.reduce((sum, { points }) => sum + points, 0)
  const teleop = [...Object.values(goals), ...Object.values(finishes)].reduce((sum, { points }) => sum + points, 0)
  return { total: autonomous + adjust + teleop, autonomous, adjust, goals, finishes }
}

function allWhole({ robot }: Option): boolean {
  const trips: Trip[] = [
    ...Object.values(robot.collect),
    ...Object.values(robot.score).flat(),
    ...Object.values(robot.finish),
  ]
  return trips.every((trip) => 'whole' in trip)
}

interface Numbers {
  habit: Habit
  draw: HabitDraw
}

interface Known {
  trips: readonly GoalTrip[]
  leaving: ReturnType<typeof departure>
  /** Over its trips, in their shares; `square` of the whole cycle. */
  collect: Moments
  score: Moments
  cycle: number
  square: number
  /** Whether it begins with something that a goal takes. */
  preloaded: boolean
}

/** What is the same of a robot's draw at whatever form: worked out once, it is most of the work. */
function knownOf(game: Game, option: Option, numbers: Numbers): Known {
  const trips = tripsOf(game, option, numbers)
  const over = (of: (trip: GoalTrip) => number) => trips.reduce((sum, trip) => sum + trip.share * of(trip), 0)
  const collect = { mean: over((trip) => trip.collect.mean), square: over((trip) => trip.collect.square) }
  const score = { mean: over((trip) => trip.score.mean), square: over((trip) => trip.score.square) }
  return {
    ...{ trips, collect, score },
    leaving: departure(game, option, numbers),
    cycle: collect.mean + score.mean,
    square: over((trip) => trip.collect.square + trip.score.square + 2 * trip.collect.mean * trip.score.mean),
    preloaded: trips.some(({ preloaded }) => preloaded > 0),
  }
}

/** How many trips it makes when all of its times take so many times as long. Counted in its own seconds: at form f it has 1/f of them. */
function countOf({ clock: { teleop } }: Game, known: Known, factor: number): number {
  const { cycle, square, collect, score, leaving } = known
  const begins = known.preloaded ? factor * score.mean : 0
  if (!(cycle > 0)) return 0
  return roundTrips((teleop - begins) / factor, (teleop - leaving.at - begins) / factor, {
    ...{ cycle, square, collect },
    leaves: leaving.finish !== null,
  })
}

/**
 * Pieces that an observed robot places with one draw of its habit when all of its times take so many times as long: what
 * `habitPoints` says of them, for who asks about many times in a row.
 */
export function piecesBy(game: Game, option: Option, draw: HabitDraw): (time: number) => number {
  const { habit, form } = option.robot
  if (!habit || !allWhole(option)) return () => 0
  const known = knownOf(game, option, { habit, draw })
  const { trips } = known
  const nodes = formNodes(draw.form ?? form.spread)
  return (time) => {
    const pieces = trips.map(() => 0)
    for (const { factor, weight } of nodes) {
      const count = countOf(game, known, factor * time)
      for (const [k, { share, placed, preloaded }] of trips.entries())
        pieces[k] = (pieces[k] as number) + weight * (share * (count * placed + preloaded))
    }
    return pieces.reduce((sum, each) => sum + each, 0)
  }
}

function pointsAt(
  game: Game,
  option: Option,
  { known, factor }: { known: Known; factor: number },
): Pick<ExpectedPoints, 'goals' | 'finishes'> {
  const { trips, leaving, cycle, collect, score } = known
  const { teleop } = game.clock
  const count = countOf(game, known, factor)
  const goals: ExpectedPoints['goals'] = {}
  for (const { goal, share, placed, preloaded } of trips) {
    const pieces = share * (count * placed + preloaded)
    goals[goal.id] = { pieces, points: pieces * worthOf(goal, option, { from: teleop, until: leaving.at }) }
  }
  if (!leaving.finish) return { goals, finishes: {} }
  const { id, trip, value } = leaving.finish
  // Until the leg in hand ends: the mean of what is left of it, by its length at a random moment, and as if spread evenly up to twice that.
  const left = cycle > 0 ? (collect.square + score.square) / (2 * cycle) : 0
  const last = timeOf(trip)
  const need = factor * (left + last.mean)
  const spread = factor * Math.sqrt(left ** 2 / 3 + last.square - last.mean ** 2)
  const inTime = spread > 0 ? 0.5 * erfc((need - leaving.at) / spread / Math.SQRT2) : need <= leaving.at ? 1 : 0
  return { goals, finishes: { [id]: { attempts: 1, points: value * inTime } } }
}

/** Goals of habit and role with a source, their shares made to sum to 1. */
function tripsOf(game: Game, option: Option, { habit, draw }: Numbers): GoalTrip[] {
  const { robot, role } = option
  const shares = draw.goals ?? habit.goals
  const pieces = Object.entries(draw.pieces ?? habit.pieces)
  const total = pieces.reduce((sum, [, share]) => sum + share, 0)
  const routine = robot.autos.find(({ id }) => id === option.auto)
  const first = routine ? routine.holding : robot.preload
  const found = game.goals.flatMap((goal): GoalTrip[] => {
    const entry = robot.score[goal.id]?.[0]
    const sources = game.sources.filter(
      ({ id, piece }) =>
        robot.collect[id] &&
        role.sources.includes(id) &&
        goal.accepts.includes(piece) &&
        (robot.carries[piece] ?? 0) >= 1,
    )
    const share = Object.hasOwn(shares, goal.id) ? (shares[goal.id] as number) : 0
    if (!entry || !role.goals.includes(goal.id) || sources.length === 0 || share <= 0) return []
    const each = sources.map(({ id, piece }) => ({
      time: withRetries(timeOf(robot.collect[id]!, habit.unhindered?.[id]), robot.collect[id]!),
      load: pieces.reduce((sum, [n, part]) => sum + (part / total) * Math.min(Number(n), robot.carries[piece]!), 0),
    }))
    const mean = (of: (one: (typeof each)[number]) => number) =>
      each.reduce((sum, one) => sum + of(one) / each.length, 0)
    const success = draw.success?.[goal.id] ?? entry.success
    return [
      {
        goal,
        share,
        collect: { mean: mean(({ time }) => time.mean), square: mean(({ time }) => time.square) },
        score: timeOf(entry, habit.unhindered?.[goal.id]),
        placed: success * mean(({ load }) => load),
        preloaded: first && goal.accepts.includes(first.piece) ? success * first.count : 0,
      },
    ]
  })
  const sum = found.reduce((all, { share }) => all + share, 0)
  return found.map((trip) => ({ ...trip, share: trip.share / sum }))
}

/** By the duration itself: finding a robot's pace asks for the same ones thousands of times. */
const keptMoments = new WeakMap<Duration, { mean: number; variance: number }>()

function momentsOf(duration: Duration): { mean: number; variance: number } {
  const before = keptMoments.get(duration)
  if (before) return before
  const { mean, variance } = distributionOf(duration)
  keptMoments.set(duration, { mean, variance })
  return { mean, variance }
}

function timeOf(trip: Trip, unhindered = 1): Moments {
  const { mean, variance } = momentsOf((trip as { whole: Duration }).whole)
  return { mean: unhindered * mean, square: unhindered ** 2 * (variance + mean ** 2) }
}

/** With K failures before the one success, K geometric. */
function withRetries(time: Moments, { success, retry }: { success: number; retry: Duration | null }): Moments {
  if (!retry || success >= 1) return time
  const each = distributionOf(retry)
  const failures = (1 - success) / success
  const mean = time.mean + failures * each.mean
  const variance = time.square - time.mean ** 2 + failures * each.variance + (failures / success) * each.mean ** 2
  return { mean, square: variance + mean ** 2 }
}

/**
 * Pieces are placed in all scoring legs that begin before the robot leaves and end before the buzzer; the first begins after a
 * collecting leg.
 */
function roundTrips(
  whole: number,
  untilLeaving: number,
  of: { cycle: number; square: number; collect: Moments; leaves: boolean },
): number {
  const { cycle, square, collect, leaves } = of
  const relative = (square - cycle ** 2) / cycle ** 2
  const ended = Math.max(0, whole / cycle + (relative - 1) / 2)
  if (!leaves) return ended
  return Math.min(ended, Math.max(0, (untilLeaving - collect.mean) / cycle + (relative + 1) / 2))
}

/** When it leaves (time left, s), and for the finish that pays most by its own chances; 0 and none where it plays to the buzzer. */
function departure(game: Game, option: Option, { habit, draw }: Numbers) {
  const { robot, role, finish } = option
  const none: { at: number; finish: { id: string; trip: FinishTrip; value: number } | null } = { at: 0, finish: null }
  if (finish.mode === 'skip') return none
  const at = finish.mode === 'always' ? finish.at : (draw.departs ?? habit.departs)
  const pays = (id: string | null) => game.finishes.find((one) => one.id === id)?.points ?? 0
  return game.finishes.reduce((best, { id }) => {
    const trip = robot.finish[id]
    if (!trip || !role.finishes.includes(id) || at < 0) return best
    const success = draw.finish?.[id] ?? trip.success
    const value = success * pays(id) + (1 - success) * pays(trip.otherwise)
    return value > (best.finish?.value ?? 0) ? { at, finish: { id, trip, value } } : best
  }, none)
}

/** Points of a piece: placed at a time that is as likely as any other between the two. */
function worthOf({ id, award }: Goal, option: Option, { from, until }: { from: number; until: number }): number {
  if (award.kind === 'each') return award.teleop
  const hold = option.holdSeconds[id] ?? 0
  if (hold <= until || from <= until) return award.teleopPerSecond * hold
  const short = (Math.min(hold, from) ** 2 - until ** 2) / 2
  const long = hold * Math.max(0, from - hold)
  return (award.teleopPerSecond * (short + long)) / (from - until)
}
