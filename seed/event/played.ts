import { Uniforms } from '../../src/model/random/index.ts'
import {
  type Alliance,
  alliances,
  type Match,
  type Result,
  type ResultSide,
  type Slot,
} from '../../src/model/scouting/types.ts'
import { game } from '../game.ts'
import { type Strength, strengths } from './teams.ts'

type Pieces = { piers: number; gantry: number; lightship: number }

/** What a robot did in a match, from which both the official result and what scouts saw can be made. */
export interface Performance {
  team: string
  alliance: Alliance
  /** In its alliance, from 0. */
  index: number
  /** Nothing of it counts: it was not there. */
  absent: boolean
  auto: { piers: number; gantry: number }
  teleop: Pieces
  missed: Pieces
  left: boolean
  finish: 'davit' | 'dry-dock' | null
  minorFouls: number
}

export interface PlayedMatch {
  match: Match
  result: Result
  performances: Performance[]
}

/** A Poisson number by its distribution function (Knuth's multiplication is the same law; this needs one draw). */
function poisson(mean: number, uniform: number): number {
  let probability = Math.exp(-mean)
  let below = probability
  let value = 0
  while (uniform > below && value < 60) {
    value += 1
    probability *= mean / value
    below += probability
  }
  return value
}

const none: Pieces = { piers: 0, gantry: 0, lightship: 0 }

function perform({ team, state }: Slot, draw: Uniforms, at: { alliance: Alliance; index: number }): Performance {
  const strength = strengths.get(team) as Strength
  const pieces = (mean: number) => poisson(mean, draw.next())
  const auto = { piers: pieces(strength.auto.piers), gantry: pieces(strength.auto.gantry) }
  const { piers, gantry, lightship } = strength.teleop
  const teleop = { piers: pieces(piers), gantry: pieces(gantry), lightship: pieces(lightship) }
  const missed = {
    piers: pieces(strength.misses * piers),
    gantry: pieces(strength.misses * gantry),
    lightship: pieces(strength.misses * lightship),
  }
  const [end, left, minorFouls] = [draw.next(), draw.next() < strength.leaves, pieces(strength.fouls)]
  const finish = end < strength.davit ? 'davit' : end < strength.davit + strength.dock ? 'dry-dock' : null
  if (state !== 'absent') return { team, ...at, absent: false, auto, teleop, missed, left, finish, minorFouls }
  const nothing = {
    auto: { piers: 0, gantry: 0 },
    teleop: none,
    missed: none,
    left: false,
    finish: null,
    minorFouls: 0,
  }
  return { team, ...at, absent: true, ...nothing }
}

const sum = <Of>(all: readonly Of[], of: (each: Of) => number): number =>
  all.reduce((total, each) => total + of(each), 0)

/** What a goal has no room for misses: robots place one after the other. */
function withinCapacity(robots: readonly Performance[]): Performance[] {
  const goal = game.goals.find(({ id }) => id === 'gantry')!
  let room = goal.capacity!
  return robots.map((robot) => {
    const auto = Math.min(robot.auto.gantry, room)
    const teleop = Math.min(robot.teleop.gantry, room - auto)
    room -= auto + teleop
    const over = robot.auto.gantry + robot.teleop.gantry - auto - teleop
    return {
      ...robot,
      auto: { ...robot.auto, gantry: auto },
      teleop: { ...robot.teleop, gantry: teleop },
      missed: { ...robot.missed, gantry: robot.missed.gantry + over },
    }
  })
}

/** The davit has two slots, the dry dock three: who finds none left ends at the dock, or nowhere. */
function withinSlots(robots: readonly Performance[]): Performance[] {
  const slots = new Map(game.finishes.map(({ id, slots }) => [id, slots]))
  return robots.map((robot) => {
    const taken = [robot.finish, robot.finish === 'davit' ? 'dry-dock' : null].find(
      (finish) => finish !== null && slots.get(finish)! > 0,
    ) as Performance['finish'] | undefined
    if (taken) slots.set(taken, slots.get(taken)! - 1)
    return { ...robot, finish: taken ?? null }
  })
}

const award = (id: string) => {
  const goal = game.goals.find((each) => each.id === id)!
  if (goal.award.kind !== 'each') throw new Error(`${id} pays by the second`)
  return goal.award
}

/** One side's points by the game's own numbers. */
function sideOf(robots: readonly Performance[], of: { held: number; theirFouls: number }): ResultSide {
  const [piers, gantry] = [award('piers'), award('gantry')]
  const leave = game.leave?.points ?? 0
  const autonomous =
    sum(robots, ({ auto }) => auto.piers * piers.auto + auto.gantry * gantry.auto) +
    leave * robots.filter(({ left }) => left).length
  const goals = sum(robots, ({ teleop }) => teleop.piers * piers.teleop + teleop.gantry * gantry.teleop) + of.held
  const finishes = sum(robots, ({ finish }) => game.finishes.find(({ id }) => id === finish)?.points ?? 0)
  const fromFouls = of.theirFouls * game.fouls.minor
  const pieces = {
    piers: sum(robots, ({ auto, teleop }) => auto.piers + teleop.piers),
    gantry: sum(robots, ({ auto, teleop }) => auto.gantry + teleop.gantry),
    lightship: sum(robots, ({ teleop }) => teleop.lightship),
  }
  const sets = sum(game.sets, ({ needs, points }) => {
    const often = Object.entries(needs).map(([goal, n]) => Math.floor(pieces[goal as keyof Pieces] / n))
    return points * Math.min(...often)
  })
  const total = autonomous + goals + finishes + sets + fromFouls
  const bonuses = [
    ...(pieces.piers + pieces.gantry >= 18 ? ['moored'] : []),
    ...(of.held >= 60 ? ['lit'] : []),
    ...(finishes >= 22 ? ['berthed'] : []),
  ]
  return { points: { total, autonomous, goals, finishes, fromFouls }, bonuses, pieces }
}

/** Plays a match of the demo: quickly, by drawn numbers of pieces, not by the simulation of matches. */
export function play(match: Match, seed: number): PlayedMatch {
  const draw = new Uniforms(seed, [match.number, match.play])
  const sides = alliances.map((alliance) =>
    withinSlots(withinCapacity(match[alliance].map((slot, index) => perform(slot, draw, { alliance, index })))),
  ) as [Performance[], Performance[]]
  // Whoever has more buoys on the lightship holds it, from the first one on.
  const ships = sides.map((robots) => sum(robots, ({ teleop }) => teleop.lightship)) as [number, number]
  const seconds = Math.floor(25 + 80 * draw.next())
  const held = [ships[0] > ships[1] ? seconds : 0, ships[1] > ships[0] ? seconds : 0] as const
  const fouls = sides.map((robots) => sum(robots, ({ minorFouls }) => minorFouls)) as [number, number]
  const [red, blue] = [
    sideOf(sides[0], { held: held[0], theirFouls: fouls[1] }),
    sideOf(sides[1], { held: held[1], theirFouls: fouls[0] }),
  ]
  return { match, result: { match: match.id, red, blue }, performances: sides.flat() }
}
