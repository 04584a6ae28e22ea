import type { Game, Point } from '../../../../src/model/documents/types.ts'
import { words } from '../../../words/catalogue.ts'
import { freeId } from './fill.ts'
import { withObstacleAdded } from './obstacles.ts'
import { rounded, roundedPoint } from './partner.ts'
import { type PlaceList, placeLists, withObstacles } from './things.ts'

const idsIn = (entries: readonly { id: string }[]): Set<string> => new Set(entries.map(({ id }) => id))

/** Ids of starts and spots share one space. */
export const spotIds = (game: Game): Set<string> =>
  idsIn([...game.starts, ...placeLists.flatMap((list) => game[list].flatMap(({ spots }) => spots))])

/** Where something new is put: in the own half, a little aside of what is there already. */
function freePoint(game: Game): Point {
  const { length, width } = game.field
  const taken = [...game.starts, ...placeLists.flatMap((list) => game[list].flatMap(({ spots }) => spots))]
  for (let turn = 0; ; turn++) {
    const point = roundedPoint([length * 0.25 + ((turn * 0.5) % (length * 0.2)), width / 2 + 0.5 * (turn % 3) - 0.5])
    if (turn > 60 || !taken.some(({ at }) => Math.hypot(at[0] - point[0], at[1] - point[1]) < 0.3)) return point
  }
}

/** What was added, and the key of the thing to choose. */
export interface Added {
  game: Game
  key: string
}

export function withStart(game: Game, beside?: Point): Added {
  const number = game.starts.length
  const id = freeId(spotIds(game), 'start-')
  const at = beside ?? freePoint(game)
  const start = { id, name: words().field.names.start(number + 1), at }
  return { game: { ...game, starts: [...game.starts, start] }, key: `starts/${number}` }
}

export function withSpot(game: Game, list: PlaceList, index: number, beside?: Point): Added {
  const place = game[list][index]!
  const spot = { id: freeId(spotIds(game), `${place.id}.`), at: beside ?? freePoint(game) }
  const places = game[list].map((other, at) => (at === index ? { ...other, spots: [...other.spots, spot] } : other))
  return { game: { ...game, [list]: places }, key: `${list}/${index}/spots/${place.spots.length}` }
}

/** A new place with one spot, to be named. */
export function withPlace(game: Game, list: PlaceList): Added {
  const texts = words().field.names
  const number = game[list].length
  const one = { sources: 'source', goals: 'goal', finishes: 'finish' } as const
  const id = freeId(new Set(placeLists.flatMap((other) => game[other].map((place) => place.id))), `${one[list]}-`)
  const shared = {
    id,
    name: texts[one[list]](number + 1),
    spots: [{ id: freeId(spotIds(game), `${id}.`), at: freePoint(game) }],
    slots: 1,
  }
  const piece = game.pieces[0]?.id ?? ''
  const rest = {
    sources: { piece, stock: null, restock: null, shared: false },
    goals: { accepts: [piece], capacity: null, award: { kind: 'each', auto: 2, teleop: 1 } },
    finishes: { points: 5 },
  } as const
  const places = [...game[list], { ...shared, ...rest[list] }]
  return { game: { ...game, [list]: places } as Game, key: `${list}/${number}/spots/0` }
}

/** A new obstacle in the own half, with its partner on the other. */
export function withObstacle(game: Game, shape: 'box' | 'triangle'): Added {
  const texts = words().field.names
  const { field } = game
  const number = field.obstacles.length
  const taken = idsIn(field.obstacles)
  const id = freeId(taken, 'obstacle-')
  const name = texts.obstacle(number + 1)
  const [x, y] = [field.length * 0.3, field.width * 0.25]
  const size = Math.min(1, field.length / 8, field.width / 8)
  const corners: Point[] = [
    [x, y],
    [x + size, y],
    ...(shape === 'box' ? [[x + size, y + size] as Point, [x, y + size] as Point] : [[x, y + size] as Point]),
  ]
  const outline = corners.map(([a, b]): Point => [rounded(a), rounded(b)])
  const other = { id: freeId(new Set([...taken, id]), 'obstacle-'), name: texts.partner(name) }
  return {
    game: withObstacles(game, withObstacleAdded(field, { id, name, outline }, other)),
    key: `field/obstacles/${number}`,
  }
}
