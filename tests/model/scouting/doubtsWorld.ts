import { game } from '../../../seed/game.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import type { Watched } from '../../../src/model/scouting/index.ts'
import type { Match, Observation, Result, ResultSide, Side } from '../../../src/model/scouting/types.ts'

/** An invented event of the season Breakwater: what robots did, what officials counted, and what honest scouts saw of it. */
export interface World {
  matches: Match[]
  results: Result[]
  /** As a phone would have it: counts by goal and period. */
  watched: Watched[]
  /** What the robot of each record did. */
  robots: Robot[]
  draw: Uniforms
}

const goals = ['piers', 'gantry', 'lightship'] as const
type Counts = { auto: number[]; teleop: number[] }

function poisson(mean: number, draw: Uniforms): number {
  let n = 0
  let left = Math.log(draw.next()) + mean
  while (left > 0) {
    left += Math.log(draw.next())
    n++
  }
  return n
}

interface Strength {
  auto: number[]
  teleop: number[]
  davit: number
}

function strengthOf(draw: Uniforms): Strength {
  const [skill, high] = [0.4 + 1.2 * draw.next(), draw.next()]
  const ship = draw.next() < 0.3 ? 2.5 * draw.next() : 0.2
  return {
    auto: [skill * (1 - high) * 1.6, skill * high * 1.2, 0],
    teleop: [skill * (1 - high) * 9 + 0.5, skill * high * 5, skill * ship],
    davit: draw.next(),
  }
}

/** A piece is missed, counted twice, or written down for another goal: what happens to honest people. */
const slips = { missed: 0.03, twice: 0.015, goal: 0.007 }

function honest(counts: Counts, draw: Uniforms): Counts {
  const seen = (own: number[]) => {
    const found = own.map(() => 0)
    own.forEach((n, k) => {
      for (let i = 0; i < n; i++) {
        const u = draw.next()
        if (u < slips.missed) continue
        if (u < slips.missed + slips.twice) found[k]! += 2
        else if (u < slips.missed + slips.twice + slips.goal) found[(k + 1) % 2]! += 1
        else found[k]! += 1
      }
    })
    return found
  }
  return { auto: seen(counts.auto), teleop: seen(counts.teleop) }
}

export interface Robot {
  team: string
  counts: Counts
  left: boolean
  finish: string | null
}

function sideOf(robots: readonly Robot[]): ResultSide {
  const sum = (of: (robot: Robot) => number) => robots.reduce((total, robot) => total + of(robot), 0)
  const pays = game.goals.map(({ award }) => (award.kind === 'each' ? award.auto : 0))
  const autonomous =
    sum(({ counts }) => counts.auto.reduce((total, n, k) => total + n * pays[k]!, 0)) +
    sum(({ left }) => (left ? (game.leave?.points ?? 0) : 0))
  const finishes = sum(({ finish }) => game.finishes.find(({ id }) => id === finish)?.points ?? 0)
  const pieces = Object.fromEntries(
    goals.map((goal, k) => [goal, sum(({ counts }) => counts.auto[k]! + counts.teleop[k]!)]),
  )
  return { points: { total: autonomous + finishes + 100, autonomous, finishes }, pieces }
}

const countsOf = ({ auto, teleop }: Counts): NonNullable<Observation['counts']> =>
  goals.flatMap((goal, k) => [
    { goal, period: 'auto' as const, scored: auto[k]!, missed: 0 },
    { goal, period: 'teleop' as const, scored: teleop[k]!, missed: 0 },
  ])

/**
 * @param scouts six of them, drawn anew for each match, sit in the stands
 */
export function worldOf(seed: number, { teams = 40, matches = 100, scouts = 12 } = {}): World {
  const draw = new Uniforms(seed, [77])
  const all = Array.from({ length: teams }, (_, t) => ({ team: `${9001 + t}`, strength: strengthOf(draw) }))
  const shuffled = <Of>(of: readonly Of[]) =>
    of
      .map((each) => ({ each, lot: draw.next() }))
      .sort((a, b) => a.lot - b.lot)
      .map(({ each }) => each)
  const world: World = { matches: [], results: [], watched: [], robots: [], draw }
  for (let m = 1; m <= matches; m++) {
    const six = shuffled(all).slice(0, 6)
    const seats = shuffled(Array.from({ length: scouts }, (_, s) => `scout ${s}`)).slice(0, 6)
    const robots = six.map(({ team, strength }): Robot => {
      const form = Math.exp(0.4 * (draw.next() + draw.next() - 1))
      const numbers = (means: number[]) => means.map((mean) => poisson(mean * form, draw))
      const counts = { auto: numbers(strength.auto), teleop: numbers(strength.teleop) }
      const finish = draw.next() < strength.davit ? 'davit' : draw.next() < 0.7 ? 'dry-dock' : null
      return { team, counts, left: draw.next() < 0.85, finish }
    })
    const slots = six.map(({ team }) => ({ team, counts: true, state: 'played' as const }))
    const id = `qualification-${m}`
    world.matches.push({
      id,
      phase: 'qualification',
      number: m,
      play: 1,
      red: slots.slice(0, 3) as Side,
      blue: slots.slice(3) as Side,
    })
    world.results.push({ match: id, red: sideOf(robots.slice(0, 3)), blue: sideOf(robots.slice(3)) })
    world.robots.push(...robots)
    robots.forEach((robot, k) => {
      world.watched.push({ team: robot.team, observation: observationOf(robot, { match: id, scout: seats[k]! }, draw) })
    })
  }
  return world
}

function observationOf(robot: Robot, { match, scout }: { match: string; scout: string }, draw: Uniforms): Observation {
  return {
    format: 1,
    id: `${match} ${robot.team}`,
    match,
    team: robot.team,
    subject: 'robot',
    origin: 'live',
    scout,
    device: scout,
    sequence: 1,
    game: 1,
    identifiedBy: 'number',
    leftStart: robot.left,
    finish: { attempted: robot.finish, achieved: robot.finish },
    counts: countsOf(honest(robot.counts, draw)),
  }
}

/** The same with other records in the place of some. */
export const planted = (world: World, plant: (watched: Watched, index: number) => Watched): World => ({
  ...world,
  watched: world.watched.map(plant),
})

export function swappedGoals({ observation, team }: Watched): Watched {
  const other: Record<string, string> = { piers: 'gantry', gantry: 'piers' }
  const counts = (observation.counts ?? []).map((count) => ({ ...count, goal: other[count.goal] ?? count.goal }))
  return { team, observation: { ...observation, counts } }
}

/** The scout watched another robot, with slips of their own, in the name of this one. */
export function watching({ observation, team }: Watched, other: Robot, draw: Uniforms): Watched {
  const finish = { attempted: other.finish, achieved: other.finish }
  return {
    team,
    observation: { ...observation, counts: countsOf(honest(other.counts, draw)), finish, leftStart: other.left },
  }
}

/** A goal's count in teleop, off by so many. */
export function offBy({ observation, team }: Watched, goal: string, by: number): Watched {
  const counts = (observation.counts ?? []).map((count) =>
    count.goal === goal && count.period === 'teleop' ? { ...count, scored: Math.max(0, count.scored + by) } : count,
  )
  return { team, observation: { ...observation, counts } }
}
