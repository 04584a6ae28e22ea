import type { Game, Robot } from '../documents/types.ts'
import { ModelError } from '../errors.ts'
import { type Place, placeOf } from './places.ts'
import { polyline } from './polyline.ts'
import { fieldRoutes } from './routes.ts'
import { travelSeconds } from './seconds.ts'
import type { FieldRoutes, Route } from './types.ts'

/**
 * The shortest way of a robot's centre from one start or spot to another, and how long it takes from rest to rest,
 * without pace (m, s).
 *
 * Errors: ModelError 'invalid' for an id that the game does not have; 'unreachable' where a spot lies too near an
 * obstacle or the field's border, or where no gap is wide enough. Their paths begin in a request that holds the game
 * under `game` and the ids under `from` and `to`.
 */
export function travel(game: Game, robot: Pick<Robot, 'footprint' | 'drive'>, from: string, to: string): Route {
  const start = placeNamed(game, from, 'from')
  const end = placeNamed(game, to, 'to')
  const routes = fieldRoutes(game.field, robot.footprint)
  for (const place of [start, end]) refuseBlocked(routes, place, start, end)
  const route = routes.route(start.at, end.at)
  if (!route) {
    throw new ModelError(
      'unreachable',
      `There is no way from ${start.label} to ${end.label}: no gap is wide enough for the robot, whose centre keeps ${metres(routes.radius)} from obstacles and border.`,
      ['game', 'field', 'obstacles'],
    )
  }
  const { length, segments } = route
  return { length, seconds: travelSeconds(segments, robot.drive), path: polyline(start.at, segments) }
}

function placeNamed(game: Game, id: string, field: 'from' | 'to'): Place {
  const place = placeOf(game, id)
  if (!place) throw new ModelError('invalid', `The game has no start or spot with the id '${id}'.`, [field])
  return place
}

function refuseBlocked(routes: FieldRoutes, place: Place, start: Place, end: Place) {
  const blocker = routes.blockedBy(place.at)
  if (!blocker) return
  throw new ModelError(
    'unreachable',
    `There is no way from ${start.label} to ${end.label}: ${place.label} at (${place.at.join(', ')}) is too near ${blocker} for the robot, whose centre keeps ${metres(routes.radius)} from it.`,
    ['game', ...place.path],
  )
}

function metres(value: number): string {
  return `${Number(value.toFixed(3))} m`
}
