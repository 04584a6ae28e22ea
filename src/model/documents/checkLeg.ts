import type { Path, Problem } from '../errors.ts'
import type { LegRequest } from '../leg/types.ts'
import { placedPoints } from './checkField.ts'
import { idSet, known } from './checkIds.ts'
import { problem } from './sentences.ts'
import type { Game, Load, Robot, Spot } from './types.ts'

/** The place where a leg ends must be the game's, and the robot must have an entry for it. */
function checkEntry(
  id: string,
  entries: object,
  at: { noun: 'source' | 'goal' | 'finish'; known: ReadonlySet<string> },
): Problem[] {
  const unknown = known(id, at.known, { path: [at.noun], noun: at.noun })
  if (unknown.length > 0 || Object.hasOwn(entries, id)) return unknown
  return [problem([at.noun], 'noEntry', { thing: at.noun, id })]
}

function checkSpot(spot: string, spots: readonly Spot[], place: string): Problem[] {
  return known(spot, idSet(spots), { path: ['spot'], noun: { spotOf: place } })
}

function checkCount({ piece, count }: Load, robot: Robot): Problem[] {
  const most = Object.hasOwn(robot.carries, piece) ? robot.carries[piece]! : 0
  if (count <= most) return []
  return [problem(['load'], 'tooMany', { what: 'load', piece, most, count })]
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
    return [problem(['entry'], 'noSuchEntry', { goal: goal.id, count: entries.length, entry: leg.entry })]
  }
  const spots = goal.spots.filter(({ id }) => entry.spots === 'any' || entry.spots.includes(id))
  const refused = goal.accepts.includes(leg.piece)
    ? checkCount({ piece: leg.piece, count: leg.load }, robot)
    : [problem(['piece'], 'notAccepted', { goal: goal.id, piece: leg.piece })]
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
