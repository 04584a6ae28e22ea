import type { HabitDraw } from '../../documents/habit.ts'
import type { Auto, Duration, Game, Load, Option, Robot } from '../../documents/types.ts'
import type { EventEstimates, TeamDraws } from '../estimates/index.ts'
import { meanOfDraws } from '../estimates/summary.ts'
import { finishHabit } from './finish.ts'
import { timeFor } from './pace.ts'
import { type Usual, usualOf } from './usual.ts'

export interface Observed {
  /** The team as a robot of a match, with draws from what is believed of it: draw d of all teams belongs together. */
  option: Option
  /** Factor on the times that were seen with which it tries the pieces that are expected; null where no trip was timed. */
  factor: number | null
}

/** Where nobody has said how large it is (m), and how it drives: whole legs need neither. */
const unknownBody = {
  footprint: { length: 0.8, width: 0.8 },
  drive: { topSpeed: 3, acceleration: 3, deceleration: 3, pace: { kind: 'fixed', seconds: 1 } as Duration },
}
/** Of the time left at its departure that the way to its finish takes: what comes too late is in the chances already. */
const finishingShare = 0.4
/** A share below this is no habit. */
const least = 0.02

/**
 * A team as a robot that plays by habit in simulated matches. Times of trips are split where pieces were collected, with
 * spreads that give the whole trip's; then all of them are scaled so that expected attempts agree with what was counted.
 *
 * @param draws how many draws go along, at most as many as the estimates have
 */
export function observedRobot(event: EventEstimates, team: string, { draws: count }: { draws: number }): Observed {
  const { game, seen, holdSeconds = {} } = event.input
  const own = seen.get(team) ?? []
  const usual = usualOf(own, [...seen.values()].flat())
  const draws = event.draws(team)
  const robot = robotOf(game, team, { draws, usual })
  const start = game.starts.find(({ id }) => id === usual.startSpot) ?? game.starts[0]!
  const base: Option = {
    format: 1,
    id: team,
    name: team,
    robot,
    start: start.id,
    auto: robot.autos[0]?.id ?? null,
    role: {
      sources: Object.keys(robot.collect),
      goals: Object.keys(robot.score),
      finishes: Object.keys(robot.finish),
      defend: null,
    },
    finish: { mode: 'best' },
    holdSeconds: Object.fromEntries(
      game.goals.flatMap(({ id, award }) => (award.kind === 'hold' ? [[id, holdSeconds[id] ?? 0]] : [])),
    ),
    adjust: [],
  }
  const time = timeFor(game, base, { attempts: event.team(team).attempts.mean, draw: {}, from: 1 })
  const scaled = { ...base, robot: stretched(robot, time) }
  const step = draws.attempts.length / count
  const habit = robot.habit!
  const finish = finishHabit(game, draws.finish.map(meanOfDraws))
  const all = Array.from({ length: count }, (_, k): HabitDraw => {
    const d = Math.floor(k * step)
    const draw: HabitDraw = {
      form: draws.trips ? Math.min(3, Math.exp(draws.trips.form[d] as number)) : robot.form.spread,
      goals: shares(Object.keys(habit.goals), draws.goals, {
        d,
        index: (id) => game.goals.findIndex((g) => g.id === id),
      }),
      pieces: shares(Object.keys(habit.pieces), draws.pieces, { d, index: (n) => Number(n) - 1 }),
      departs: draws.departs[d] as number,
      success: Object.fromEntries(
        Object.keys(habit.goals).map((id) => [id, at(draws.success(game.goals.findIndex((g) => g.id === id)), d)]),
      ),
      absent: at(draws.absent, d),
      stops: at(draws.stops, d),
      ...(finish ? { finish: { [finish.finish]: finish.success(draws.finish.map((each) => at(each, d))) } } : {}),
    }
    return { ...draw, time: timeFor(game, scaled, { attempts: at(draws.attempts, d), draw, from: 1 }) }
  })
  const option = { ...scaled, robot: { ...scaled.robot, habit: { ...habit, draws: all } } }
  return { option, factor: draws.trips ? time : null }
}

const at = (values: Float64Array | undefined, d: number): number => Math.min(1e6, values?.[d] ?? 0)

/** Shares of one draw under their ids. */
function shares(
  ids: readonly string[],
  values: readonly Float64Array[],
  { d, index }: { d: number; index: (id: string) => number },
): { [id: string]: number } {
  return Object.fromEntries(ids.map((id) => [id, at(values[index(id)], d)]))
}

/** Without any timed trip: a time that is put right by the factor. */
const anyTrip = { median: 12, within: Math.log(1.35), form: Math.log(1.1) }

function robotOf(game: Game, team: string, { draws, usual }: { draws: TeamDraws; usual: Usual }): Robot {
  const mean = meanOfDraws
  const trips = draws.trips
    ? { median: mean(draws.trips.median), within: mean(draws.trips.within), form: mean(draws.trips.form) }
    : anyTrip
  const goals = game.goals.flatMap((goal, k) => {
    const share = mean(draws.goals[k]!)
    return share >= least ? [{ goal, share, success: mean(draws.success(k)) }] : []
  })
  const pieces = draws.pieces.map(mean)
  const most = Math.max(1, pieces.findLastIndex((share) => share >= least) + 1)
  const accepted = new Set(goals.flatMap(({ goal }) => goal.accepts))
  const open = game.sources.filter(({ piece }) => accepted.has(piece))
  const seenAt = open.filter(({ id }) => usual.sources.includes(id))
  const carries = Object.fromEntries([...accepted].map((piece) => [piece, most]))
  const [collecting, scoring] = split(trips, usual.collecting)
  const departs = mean(draws.departs)
  const finish = finishHabit(game, draws.finish.map(mean))
  const main = goals.toSorted((a, b) => b.share - a.share)[0]?.goal.accepts[0]
  const preload: Load | null =
    usual.preload > 0 && main !== undefined ? { piece: main, count: Math.min(most, usual.preload) } : null
  return {
    format: 1,
    id: team,
    name: team,
    ...unknownBody,
    form: { spread: Math.min(3, Math.exp(trips.form)) },
    carries,
    preload,
    collect: Object.fromEntries(
      (seenAt.length > 0 ? seenAt : open).map(({ id }) => [id, { whole: collecting, success: 1, retry: null }]),
    ),
    score: Object.fromEntries(
      goals.map(({ goal, success }) => [goal.id, [{ whole: scoring, spots: 'any' as const, success }]]),
    ),
    finish: finish
      ? {
          [finish.finish]: {
            whole: { kind: 'fixed', seconds: finishingShare * departs },
            success: finish.success(draws.finish.map(mean)),
            otherwise: finish.otherwise,
          },
        }
      : {},
    autos: [autoOf(game, { draws, preload })],
    reliability: { absent: mean(draws.absent), stops: mean(draws.stops) },
    fouls: { minorPerMatch: usual.fouls.minor, majorPerMatch: usual.fouls.major },
    defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
    habit: {
      goals: Object.fromEntries(goals.map(({ goal, share }) => [goal.id, share])),
      pieces: Object.fromEntries(pieces.slice(0, most).map((share, k) => [String(k + 1), share])),
      departs,
    },
  }
}

/** A trip's time in two legs, collecting and scoring, with spreads of their own that give the trip's mean and variance. */
function split({ median, within }: { median: number; within: number }, share: number): [Duration, Duration] {
  const collecting = Math.min(0.9, Math.max(0.1, share))
  const whole = median * Math.exp(0.5 * within * within)
  // Equal relative spreads v of both: v² (s² + (1 − s)²) = relative variance of the trip.
  const variance = Math.expm1(within * within) / (collecting ** 2 + (1 - collecting) ** 2)
  const sigma = Math.sqrt(Math.log1p(variance))
  const leg = (part: number): Duration => ({
    kind: 'lognormal',
    median: whole * part * Math.exp(-0.5 * sigma * sigma),
    spread: Math.exp(sigma),
  })
  return [leg(collecting), leg(1 - collecting)]
}

const times = (duration: Duration, factor: number): Duration =>
  duration.kind === 'lognormal' ? { ...duration, median: duration.median * factor } : duration

/** Trips that take so many times as long. */
function stretched(robot: Robot, factor: number): Robot {
  const whole = <Of extends object>(trip: Of): Of =>
    'whole' in trip ? { ...trip, whole: times(trip.whole as Duration, factor) } : trip
  return {
    ...robot,
    collect: Object.fromEntries(Object.entries(robot.collect).map(([id, trip]) => [id, whole(trip)])),
    score: Object.fromEntries(Object.entries(robot.score).map(([id, entries]) => [id, entries.map(whole)])),
  }
}

/** What it places in autonomous, as one routine: pieces by goal, each with the chance that gives the mean. */
function autoOf(game: Game, { draws, preload }: { draws: TeamDraws; preload: Load | null }): Auto {
  const steps = game.goals.flatMap((goal, k) => {
    const expected = meanOfDraws(draws.autonomous[k]!)
    const piece = goal.accepts[0]
    if (expected < 0.01 || piece === undefined) return []
    const count = Math.ceil(expected)
    const step = { at: game.clock.auto / 2, goal: goal.id, piece, count, success: expected / count }
    return [{ ...step, needsPrevious: false }]
  })
  return {
    id: 'observed',
    name: 'observed',
    starts: game.starts.map(({ id }) => id),
    steps,
    leaves: meanOfDraws(draws.leaves),
    endsAt: game.starts[0]!.id,
    holding: preload,
  }
}
