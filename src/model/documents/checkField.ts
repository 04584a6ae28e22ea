import type { Path, Problem } from '../errors.ts'
import { obstaclesWithoutPartner, outlineFault } from '../field/index.ts'
import { idsOf, quoted, unique } from './checkIds.ts'
import type { Field, Game, Point } from './types.ts'

/** Everything of a game that stands at a point of the field, with what people call it. */
export function placedPoints(game: Game): { id: string; at: Point; path: Path; name: string }[] {
  const places = [
    ...game.sources.map((place, index) => ({ place, path: ['sources', index] })),
    ...game.goals.map((place, index) => ({ place, path: ['goals', index] })),
    ...game.finishes.map((place, index) => ({ place, path: ['finishes', index] })),
  ]
  return [
    ...game.starts.map(({ id, at, name }, index) => ({
      id,
      at,
      path: ['starts', index],
      name: `start ${quoted(name)}`,
    })),
    ...places.flatMap(({ place, path }) =>
      place.spots.map(({ id, at }, index) => ({
        id,
        at,
        path: [...path, 'spots', index],
        name: `spot ${quoted(id)} of ${quoted(place.name)}`,
      })),
    ),
  ]
}

function outside([x, y]: Point, { length, width }: Field): boolean {
  return x < 0 || y < 0 || x > length || y > width
}

function checkOutlines(field: Field): Problem[] {
  return field.obstacles.flatMap(({ name, outline }, index) => {
    const fault = outlineFault(outline)
    const path = ['field', 'obstacles', index, 'outline']
    return fault === null
      ? []
      : [{ path, message: `The outline of the obstacle ${quoted(name)} is no simple one. ${fault}` }]
  })
}

/** An obstacle that the other alliance would see elsewhere, each with the place where its partner is missing. */
function checkSymmetry(field: Field): Problem[] {
  const how = field.symmetry === 'mirror' ? 'mirrored' : 'turned by half a turn'
  const alone = new Set(obstaclesWithoutPartner(field))
  return field.obstacles.flatMap(({ id, name }, index) => {
    if (!alone.has(id)) return []
    const message = `The obstacle ${quoted(name)} lies on no obstacle when the field is ${how}: the alliances would see different fields`
    return [{ path: ['field', 'obstacles', index], message }]
  })
}

/** Ids, outlines and symmetry of the field, and whether everything stands on it. */
export function checkField(game: Game): Problem[] {
  const { field } = game
  const points = placedPoints(game)
  const outlines = checkOutlines(field)
  return [
    ...unique(idsOf(field.obstacles, ['field', 'obstacles']), 'obstacles'),
    ...unique(
      points.map(({ id, path }) => ({ id, path: [...path, 'id'] })),
      'starts or spots',
    ),
    ...outlines,
    ...points
      .filter(({ at }) => outside(at, field))
      .map(({ at, path, name }) => ({
        path: [...path, 'at'],
        message: `The ${name} lies outside the field of ${field.length} m × ${field.width} m, at ${at.join(', ')}`,
      })),
    ...(outlines.length === 0 ? checkSymmetry(field) : []),
  ]
}
