import type { Path, Problem } from '../errors.ts'
import { obstaclesWithoutPartner, outlineFault } from '../field/index.ts'
import { idsOf, unique } from './checkIds.ts'
import { problem, type Standing } from './sentences.ts'
import type { Field, Game, Point } from './types.ts'

/** Everything of a game that stands at a point of the field, with what it is. */
export function placedPoints(game: Game): { id: string; at: Point; path: Path; what: Standing }[] {
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
      what: { start: name },
    })),
    ...places.flatMap(({ place, path }) =>
      place.spots.map(({ id, at }, index) => ({
        id,
        at,
        path: [...path, 'spots', index],
        what: { spot: id, of: place.name },
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
    return fault === null ? [] : [problem(path, 'badOutline', { obstacle: name, fault })]
  })
}

/** An obstacle that the other alliance would see elsewhere, each with the place where its partner is missing. */
function checkSymmetry(field: Field): Problem[] {
  const alone = new Set(obstaclesWithoutPartner(field))
  return field.obstacles.flatMap(({ id, name }, index) => {
    if (!alone.has(id)) return []
    return [problem(['field', 'obstacles', index], 'noPartner', { obstacle: name, symmetry: field.symmetry })]
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
      .map(({ at, path, what }) =>
        problem([...path, 'at'], 'outside', { what, at, length: field.length, width: field.width }),
      ),
    ...(outlines.length === 0 ? checkSymmetry(field) : []),
  ]
}
