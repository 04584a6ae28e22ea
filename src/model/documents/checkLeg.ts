import type { Path, Problem } from '../errors.ts'
import type { LegRequest } from '../leg/types.ts'
import { placedPoints } from './checkField.ts'
import { idSet, known, quoted } from './checkIds.ts'
import type { Game, Load, Robot, Spot } from './types.ts'

/** The place where a leg ends must be the game's, and the robot must have an entry for it. */
function checkEntry(id: string, entries: object, at: { noun: string; known: ReadonlySet<string> }): Problem[] {
  const unknown = known(id, at.known, { path: [at.noun], noun: at.noun })
  if (unknown.length > 0 || Object.hasOwn(entries, id)) return unknown
  return [{ path: [at.noun], message: `The robot has no entry for the ${at.noun} ${quoted(id)}` }]
}

function checkSpot(spot: string, spots: readonly Spot[], place: string): Problem[] {
  return known(spot, idSet(spots), { path: ['spot'], noun: `spot of ${quoted(place)}` })
}

function checkCount({ piece, count }: Load, robot: Robot): Problem[] {
  const most = Object.hasOwn(robot.carries, piece) ? robot.carries[piece]! : 0
  if (count <= most) return []
  const message = `load must be at most what the robot carries of ${quoted(piece)} (${most}), got ${count}`
  return [{ path: ['load'], message }]
}

function checkCollect(game: Game, robot: Robot, leg: LegRequest & { kind: 'collect' }): Problem[] {
  const unknown = checkEntry(leg.source, robot.collect, { noun: 'source', known: idSet(game.sources) })
  const source = game.sources.find(({ id }) => id === leg.source)
  if (unknown.length > 0 || !source) return unknown
  return [
    ...checkSpot(leg.spot, source.spots, source.id),
    ...checkCount({ piece: source.piece, count: leg.load }, robot),
  ]
}

function checkScore(game: Game, robot: Robot, leg: LegRequest & { kind: 'score' }): Problem[] {
  const unknown = checkEntry(leg.goal, robot.score, { noun: 'goal', known: idSet(game.goals) })
  const goal = game.goals.find(({ id }) => id === leg.goal)
  if (unknown.length > 0 || !goal) return unknown
  const entries = robot.score[leg.goal]!
  const entry = entries[leg.entry]
  if (!entry) {
    const message = `entry must be less than ${entries.length}, the number of ways in which the robot scores at ${quoted(goal.id)}, got ${leg.entry}`
    return [{ path: ['entry'], message }]
  }
  const spots = goal.spots.filter(({ id }) => entry.spots === 'any' || entry.spots.includes(id))
  const refused = goal.accepts.includes(leg.piece)
    ? checkCount({ piece: leg.piece, count: leg.load }, robot)
    : [{ path: ['piece'], message: `The goal ${quoted(goal.id)} does not accept ${quoted(leg.piece)}` }]
  return [...checkSpot(leg.spot, spots, goal.id), ...refused]
}

function checkFinish(game: Game, robot: Robot, leg: LegRequest & { kind: 'finish' }): Problem[] {
  const unknown = checkEntry(leg.finish, robot.finish, { noun: 'finish', known: idSet(game.finishes) })
  const finish = game.finishes.find(({ id }) => id === leg.finish)
  return unknown.length > 0 || !finish ? unknown : checkSpot(leg.spot, finish.spots, finish.id)
}

function checkEnd(game: Game, robot: Robot, leg: LegRequest): Problem[] {
  switch (leg.kind) {
    case 'collect':
      return checkCollect(game, robot, leg)
    case 'score':
      return checkScore(game, robot, leg)
    case 'finish':
      return checkFinish(game, robot, leg)
  }
}

/** A leg that is asked for must be one that this robot can drive in this game. Paths begin in the leg. */
export function checkLeg(game: Game, robot: Robot, leg: LegRequest): Problem[] {
  const path: Path = ['from']
  return [...known(leg.from, idSet(placedPoints(game)), { path, noun: 'start or spot' }), ...checkEnd(game, robot, leg)]
}
