import type { HabitDraw } from '../../../../src/model/documents/habit.ts'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import { Reckoning } from '../../../../src/model/match/reckoning.ts'
import { Roster } from '../../../../src/model/match/setup.ts'
import { Simulator } from '../../../../src/model/match/simulator.ts'
import type { MatchEvent } from '../../../../src/model/match/types.ts'
import { seenIn, type TeamMatch } from '../../../../src/model/scouting/seen/index.ts'
import { medianOf, normalQuantile } from '../../../../src/model/scouting/statistics/index.ts'
import type { Happening } from '../../../../src/model/scouting/types.ts'
import { game as season } from '../../reference.ts'
import { Chance, record } from './world.ts'

/**
 * Events whose matches the match simulator plays: a source of records that knows nothing of what estimates assume. Places have room
 * for everybody, so that what a robot can do belongs to it alone and can be counted in further matches.
 */
export const game: Game = {
  ...season,
  sources: season.sources
    .filter(({ id }) => id === 'slipway')
    .map((source) => ({ ...source, slots: 3, stock: null, restock: null })),
  goals: season.goals
    .filter(({ award }) => award.kind === 'each')
    .map((goal) => ({ ...goal, slots: 3, capacity: null })),
  finishes: season.finishes.filter(({ id }) => id === 'davit').map((finish) => ({ ...finish, slots: 3 })),
  sets: [],
  bonuses: [],
}

const goals = ['pier', 'gantry'] as const
const worth = Object.fromEntries(
  game.goals.map(({ id, award }) => [id, award.kind === 'each' ? award.teleop : 0]),
) as Record<(typeof goals)[number], number>

export interface EventShape {
  seed: number
  /** A multiple of six. */
  teams: number
  matches: number
  /** Geometric standard deviation between matches. */
  form: number
  /** Most pieces of a trip, which are then placed within two seconds. */
  volley: number
  /** How far the share of a goal moves between a robot's two ways to play, each in half of its matches. */
  strategy: number
  /** Matches to count what is true in. */
  truthIn: number
}

/** What is true of a team in matches without a stop, and of one more such match. */
export interface TrueTeam {
  team: string
  attempts: number
  points: number
  /** Median of its trips at median form (s). */
  trip: number
  success: { pier: number; gantry: number }
  finish: number
  next: { attempts: number; points: number }
}

export interface SimulatedEvent {
  seen: Map<string, TeamMatch[]>
  truth: TrueTeam[]
  /** One more match of each six, as it comes: with stops and robots that stay away. */
  coming: { ours: string[]; theirs: string[]; lead: number }[]
}

/** Medians (s) of a robot of factor 1, and their spread. Three spreads, so that robots differ in what estimates take for alike. */
const [collecting, scoring] = [7, 4.5]
const spreads = [1.28, 1.35, 1.42]

/** Stratified normal numbers in an order of their own, for medians of sums. */
const strata = 301
const normals = Array.from({ length: strata }, (_, k) => normalQuantile((k + 0.5) / strata))
const medians = new Map(
  spreads.map((spread) => {
    const time = (median: number, z: number) => median * spread ** z
    // 301 and 112 have no divisor in common, so that every pair of strata is far from its neighbours.
    const sums = normals.map((z, k) => time(collecting, z) + time(scoring, normals[(k * 112) % strata]!))
    return [spread, medianOf(sums)] as const
  }),
)

interface Made {
  option: Option
  trip: number
  success: { pier: number; gantry: number }
}

function robotOf(team: string, { chance, shape }: { chance: Chance; shape: EventShape }): Made {
  const spread = spreads[Math.floor(3 * chance.uniform())]!
  const factor = (shape.volley > 1 ? 1.2 : 1) * Math.exp(0.3 * chance.normal())
  const success = { pier: 0.7 + 0.28 * chance.uniform(), gantry: 0.5 + 0.45 * chance.uniform() }
  const pier = 0.15 + 0.7 * chance.uniform()
  const pieces = Object.fromEntries(
    Array.from({ length: shape.volley }, (_, n) => [String(n + 1), 0.2 + chance.uniform()]),
  )
  const draw = (share: number): HabitDraw => ({ time: factor, goals: { pier: share, gantry: 1 - share } })
  const off = shape.strategy
  const draws = [draw(Math.min(0.98, pier + off)), draw(Math.max(0.02, pier - off))]
  const time = (median: number) => ({ kind: 'lognormal' as const, median, spread })
  const option: Option = {
    format: 1,
    id: team,
    name: team,
    robot: {
      format: 1,
      id: team,
      name: team,
      footprint: { length: 0.8, width: 0.8 },
      drive: { topSpeed: 3, acceleration: 3, deceleration: 3, pace: { kind: 'fixed', seconds: 1 } },
      form: { spread: shape.form },
      carries: { cask: shape.volley },
      preload: { piece: 'cask', count: 1 },
      collect: { slipway: { whole: time(collecting), success: 1, retry: null } },
      score: Object.fromEntries(
        goals.map((goal) => [goal, [{ whole: time(scoring), spots: 'any' as const, success: success[goal] }]]),
      ),
      finish: {
        davit: { whole: { kind: 'fixed', seconds: 4 }, success: 0.2 + 0.7 * chance.uniform(), otherwise: null },
      },
      autos: [],
      reliability: { absent: 0.02, stops: 0.05 },
      fouls: { minorPerMatch: 0, majorPerMatch: 0 },
      defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
      habit: { goals: { pier, gantry: 1 - pier }, pieces, departs: 14 + 8 * chance.uniform(), draws },
    },
    start: season.starts[0]!.id,
    auto: null,
    role: { sources: ['slipway'], goals: [...goals], finishes: ['davit'], defend: null },
    finish: { mode: 'best' },
    holdSeconds: {},
    adjust: [],
  }
  return { option, trip: factor * medians.get(spread)!, success }
}

const unhindered = (option: Option): Option => ({
  ...option,
  robot: { ...option.robot, reliability: { absent: 0, stops: 0 } },
})

/** Numbers of matches that are counted begin here, so that none of them was seen. */
const afterwards = 1000

/** One event: robots in sixes that stay together, since nobody is in another's way. */
export function simulatedEvent(shape: EventShape): SimulatedEvent {
  const chance = new Chance(shape.seed, 77)
  const roster = new Roster(game)
  const seen: SimulatedEvent['seen'] = new Map()
  const truth: TrueTeam[] = []
  const coming: SimulatedEvent['coming'] = []
  for (let first = 0; first < shape.teams; first += 6) {
    const made = Array.from({ length: 6 }, (_, k) => robotOf(`t${first + k}`, { chance, shape }))
    const seed = 1000 * shape.seed + first
    const play = (options: readonly Option[]) =>
      new Simulator(roster.setup(options.slice(0, 3), options.slice(3)), seed)
    const hindered = play(made.map(({ option }) => option))
    for (let m = 0; m < shape.matches; m++) {
      const watched = watch(hindered, m)
      for (const [k, one] of watched.entries()) {
        const { team, observation } = { team: `t${first + k}`, observation: one.recordOf(`t${first + k}`, `m${m}`) }
        const own: TeamMatch = { ...seenIn(game, observation), match: `m${m}`, era: 0 }
        seen.set(team, [...(seen.get(team) ?? []), own])
      }
    }
    const teams = made.map((_, k) => `t${first + k}`)
    coming.push({ ours: teams.slice(0, 3), theirs: teams.slice(3), lead: leadOf(hindered) })
    truth.push(...truthOf(made, play(made.map(({ option }) => unhindered(option))), { shape, first }))
  }
  return { seen, truth, coming }
}

function leadOf(simulator: Simulator): number {
  const reckoning = new Reckoning(simulator.setup, null)
  simulator.play(afterwards)
  reckoning.of(simulator)
  return (reckoning.score[0] as number) - (reckoning.score[1] as number)
}

function truthOf(
  made: readonly Made[],
  simulator: Simulator,
  { shape, first }: { shape: EventShape; first: number },
): TrueTeam[] {
  const { count, ids } = simulator.ground
  const place = (id: string) => ids.indexOf(id)
  const [pier, gantry, davit] = [place('pier'), place('gantry'), place('davit')]
  const next = watch(simulator, afterwards)
  const sums = made.map(() => ({ pier: 0, gantry: 0, davit: 0 }))
  for (let m = 1; m <= shape.truthIn; m++) {
    simulator.play(afterwards + m)
    for (const [k, sum] of sums.entries()) {
      sum.pier += simulator.placed[k * count + pier]!
      sum.gantry += simulator.placed[k * count + gantry]!
      sum.davit += simulator.placed[k * count + davit]!
    }
  }
  return made.map(({ trip, success }, k) => {
    const sum = sums[k]!
    const n = shape.truthIn
    return {
      team: `t${first + k}`,
      attempts: (sum.pier / success.pier + sum.gantry / success.gantry) / n,
      points: (worth.pier * sum.pier + worth.gantry * sum.gantry) / n,
      trip,
      success,
      finish: sum.davit / n,
      next: { attempts: next[k]!.attempts, points: next[k]!.points },
    }
  })
}

interface Watched {
  attempts: number
  points: number
  recordOf: (team: string, match: string) => ReturnType<typeof record>
}

/** One match as six scouts see it. */
function watch(simulator: Simulator, match: number): Watched[] {
  const events: MatchEvent[] = []
  simulator.log = (event) => events.push(event)
  simulator.play(match)
  simulator.log = null
  return Array.from({ length: 6 }, (_, robot) => {
    const own = events.filter((event) => event.robot === robot)
    const came = simulator.played[robot] !== 0
    return watchedOf(own, came)
  })
}

/** Seconds between the pieces of a volley. */
const apart = 0.4

function watchedOf(events: readonly MatchEvent[], came: boolean): Watched {
  const { auto, pause, teleop } = game.clock
  const stop = events.find(({ kind }) => kind === 'stops')?.at ?? Number.POSITIVE_INFINITY
  const end = Math.min(stop, auto + pause + teleop)
  const timeline: Happening[] = []
  let [attempts, points] = [0, 0]
  let achieved: string | null = null
  let left = false
  for (const event of events) {
    if (event.kind === 'finishes') achieved = event.place
    if (event.kind === 'drives' && event.place === 'davit' && event.at < end) {
      timeline.push({ elapsed: event.at, what: 'left' })
      left = true
    }
    if (event.kind !== 'works' || event.until > end) continue
    if (event.place === 'slipway') timeline.push({ elapsed: event.until, what: 'collected', source: 'slipway' })
    else if (event.place === 'pier' || event.place === 'gantry') {
      const { place, until, load } = event
      const hits = events.filter(
        (each) => each.kind === 'places' && each.place === place && near(each.at, until),
      ).length
      attempts += load
      points += hits * worth[place]
      for (let n = 0; n < load; n++)
        timeline.push({ elapsed: until - apart * (load - 1 - n), what: n < hits ? 'scored' : 'missed', goal: place })
    }
  }
  if (stop < auto + pause + teleop) timeline.push({ elapsed: stop, what: 'stopped' })
  const finish = { attempted: left ? 'davit' : null, achieved }
  const played = { timeline: timeline.sort((a, b) => a.elapsed - b.elapsed), finish, attempts, points }
  return {
    attempts,
    points,
    recordOf: (team, of) => ({ ...record(team, of, played), ...(came ? {} : { absent: true }) }),
  }
}

const near = (one: number, other: number) => Math.abs(one - other) < 1e-6
