import type { Habit, HabitDraw } from '../../../src/model/documents/habit.ts'
import type { Duration, Game, Option, Robot } from '../../../src/model/documents/types.ts'
import { Roster } from '../../../src/model/match/setup.ts'
import { Simulator } from '../../../src/model/match/simulator.ts'
import type { MatchEvent } from '../../../src/model/match/types.ts'
import { game } from '../reference.ts'

const fixed = (seconds: number): Duration => ({ kind: 'fixed', seconds })

/**
 * An observed robot of the reference's season: takes 3 s to collect and 2 s to score, up to two pieces, begins with empty hands.
 * It never fails, stops or fouls, so that what differs is what a test changes.
 */
export function seen(team: string, change: Partial<Robot> = {}, habit: Partial<Habit> = {}): Option {
  const scoring = { whole: fixed(2), spots: 'any', success: 1 } as const
  const robot: Robot = {
    format: 1,
    id: team,
    name: team,
    footprint: { length: 0.8, width: 0.8 },
    drive: { topSpeed: 3, acceleration: 3, deceleration: 3, pace: fixed(1) },
    form: { spread: 1 },
    carries: { cask: 2 },
    preload: null,
    collect: { slipway: { whole: fixed(3), success: 1, retry: null } },
    score: { pier: [scoring], gantry: [scoring], lightship: [scoring] },
    finish: { drydock: { whole: fixed(4), success: 1, otherwise: null } },
    autos: [],
    reliability: { absent: 0, stops: 0 },
    fouls: { minorPerMatch: 0, majorPerMatch: 0 },
    defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
    habit: { goals: { pier: 1 }, pieces: { 1: 1 }, departs: 0, ...habit },
    ...change,
  }
  return {
    format: 1,
    id: team,
    name: team,
    robot,
    start: 's1',
    auto: null,
    role: {
      sources: ['slipway', 'raft'],
      goals: ['pier', 'gantry', 'lightship'],
      finishes: ['drydock', 'davit'],
      defend: null,
    },
    finish: { mode: 'best' },
    holdSeconds: { lightship: 3 },
    adjust: [],
  }
}

/** The same with times that vary, and with four draws from what is believed about the team. */
export function drawn(team: string, change: Partial<Robot> = {}): Option {
  const time = (median: number): Duration => ({ kind: 'lognormal', median, spread: 1.3 })
  const draws: HabitDraw[] = [
    {},
    { time: 1.4, success: { pier: 0.5 }, departs: 25 },
    { time: 0.8, form: 1.3, pieces: { 2: 1 }, finish: { drydock: 0.6 } },
    { goals: { pier: 0.2, gantry: 0.8 }, absent: 0.2, stops: 0.3 },
  ]
  const robot: Partial<Robot> = {
    preload: { piece: 'cask', count: 1 },
    collect: {
      slipway: { whole: time(6), success: 0.9, retry: fixed(1) },
      raft: { whole: time(5), success: 1, retry: null },
    },
    score: {
      pier: [{ whole: time(3), spots: 'any', success: 0.9 }],
      gantry: [{ whole: time(4), spots: 'any', success: 0.8 }],
    },
    finish: { drydock: { whole: fixed(4), success: 0.9, otherwise: null } },
  }
  const habit = { goals: { pier: 0.6, gantry: 0.4 }, pieces: { 1: 0.5, 2: 0.5 }, departs: 15, draws }
  return seen(team, { ...robot, ...change }, habit)
}

export const away = (option: Option): Option => ({
  ...option,
  robot: { ...option.robot, reliability: { absent: 1, stops: 0 } },
})

/** Matches of these robots in the seats with these numbers, 0–2 ours; the other seats stay empty. */
export function playing(robots: { [seat: number]: Option }, of: { game?: Game; seed?: number } = {}): Simulator {
  const absent = away(seen('nobody'))
  const seats = [0, 1, 2, 3, 4, 5].map((seat) => robots[seat] ?? absent)
  const setup = new Roster(of.game ?? game).setup(seats.slice(0, 3), seats.slice(3))
  return new Simulator(setup, of.seed ?? 8)
}

/** What a replay of one match shows. */
export function eventsOf(simulator: Simulator, match = 0): MatchEvent[] {
  const events: MatchEvent[] = []
  simulator.log = (event) => events.push(event)
  simulator.play(match)
  simulator.log = null
  return events
}
