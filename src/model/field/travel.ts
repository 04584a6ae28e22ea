import { refusal } from '../documents/sentences.ts'
import type { Game, Robot } from '../documents/types.ts'
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
    const ends = { from: start.called, to: end.called }
    throw refusal(
      'unreachable',
      ['noWay', { ...ends, apart: inMillimetres(routes.radius) }],
      ['game', 'field', 'obstacles'],
    )
  }
  const { length, segments } = route
  return { length, seconds: travelSeconds(segments, robot.drive), path: polyline(start.at, segments) }
}

function placeNamed(game: Game, id: string, field: 'from' | 'to'): Place {
  const place = placeOf(game, id)
  if (!place) throw refusal('invalid', ['noSuchPlace', { id }], [field])
  return place
}

function refuseBlocked(routes: FieldRoutes, place: Place, start: Place, end: Place) {
  const by = routes.blockedBy(place.at)
  if (!by) return
  const ends = { from: start.called, to: end.called }
  const near = { place: place.called, at: place.at, by, apart: inMillimetres(routes.radius) }
  throw refusal('unreachable', ['wayBlocked', { ...ends, ...near }], ['game', ...place.path])
}

/** A length as exact as a sentence needs it (m). */
export const inMillimetres = (length: number): number => Number(length.toFixed(3))
