import type { Game, Point, Robot } from '../documents/types.ts'
import type { Problem } from '../errors.ts'
import { FreeSpace } from './freeSpace.ts'
import { type Place, placeOf } from './places.ts'
import { fieldRoutes } from './routes.ts'

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
  const radius = Number(routes.radius.toFixed(3))
  return places.flatMap((place): Problem[] => {
    const blocker = routes.blockedBy(place.at)
    if (blocker) {
      const message = `${place.label} is too near ${blocker}: the robot’s centre keeps ${radius} m from it`
      return [{ path: place.path, message }]
    }
    if (!first || routes.route(first.at, place.at)) return []
    const message = `There is no way from ${first.label} to ${place.label}: no gap is wide enough for this robot`
    return [{ path: place.path, message }]
  })
}
