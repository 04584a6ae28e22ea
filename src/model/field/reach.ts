import { problem } from '../documents/sentences.ts'
import type { Game, Point, Robot } from '../documents/types.ts'
import type { Problem } from '../errors.ts'
import { FreeSpace } from './freeSpace.ts'
import { type Place, placeOf } from './places.ts'
import { fieldRoutes } from './routes.ts'
import { inMillimetres } from './travel.ts'

type Footprint = Robot['footprint']

/** By how much a robot's centre keeps away from obstacles and border (m). */
export const keptAway = (clearance: number, footprint: Footprint): number =>
  Math.min(footprint.length, footprint.width) / 2 + clearance

/** Tells for a point whether a robot's centre may stand there. */
export function standing(field: Game['field'], footprint: Footprint): (point: Point) => boolean {
  const space = new FreeSpace(field, keptAway(field.clearance, footprint))
  return ([x, y]) => space.isFree(x, y)
}

/**
 * The starts and spots on which a robot of this size can not stand, and those to which it can not drive from the first
 * one where it can. Each problem has its path from the game's root.
 *
 * Errors: ModelError 'overBudget' for more than 300 corners.
 */
export function reachProblems(game: Game, footprint: Footprint): Problem[] {
  const routes = fieldRoutes(game.field, footprint)
  const ids = [game.starts, ...[game.sources, game.goals, game.finishes].flat().map(({ spots }) => spots)].flat()
  const places = ids.map(({ id }) => placeOf(game, id)).filter((place): place is Place => place !== null)
  const first = places.find(({ at }) => routes.blockedBy(at) === null)
  const apart = inMillimetres(routes.radius)
  return places.flatMap((place): Problem[] => {
    const by = routes.blockedBy(place.at)
    if (by) return [problem(place.path, 'tooNear', { place: place.called, by, apart })]
    if (!first || routes.route(first.at, place.at)) return []
    return [problem(place.path, 'notReached', { from: first.called, to: place.called })]
  })
}
