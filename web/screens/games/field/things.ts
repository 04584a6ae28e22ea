import type { Game, Point } from '../../../../src/model/documents/types.ts'
import type { Place } from '../../../data/difference.ts'
import { withValueAt } from '../../../data/place.ts'
import { withCornerAt, withObstacleMoved } from './obstacles.ts'
import { rounded } from './partner.ts'

export type PlaceList = 'sources' | 'goals' | 'finishes'
export const placeLists: readonly PlaceList[] = ['sources', 'goals', 'finishes']
export const letters: Readonly<Record<PlaceList, string>> = { sources: 'S', goals: 'G', finishes: 'F' }

/** Something on the field that can be moved. */
export type Thing =
  | { kind: 'start'; key: string; path: Place; index: number; name: string; at: Point; id: string }
  | {
      kind: 'spot'
      key: string
      path: Place
      list: PlaceList
      index: number
      spot: number
      of: number
      name: string
      letter: string
      at: Point
      id: string
    }
  | { kind: 'obstacle'; key: string; path: Place; index: number; name: string; at: Point; id: string }
  | {
      kind: 'corner'
      key: string
      path: Place
      index: number
      corner: number
      of: number
      name: string
      at: Point
      id: string
    }

const keyed = <T extends object>(path: Place, rest: T) => ({ key: path.join('/'), path, ...rest })

/** An obstacle stands where the lower left corner of the box around it is. */
export const lowCorner = (outline: readonly Point[]): Point => [
  Math.min(...outline.map(([x]) => x)),
  Math.min(...outline.map(([, y]) => y)),
]

export function startsOf(game: Game): Thing[] {
  return game.starts.map(({ id, name, at }, index) =>
    keyed(['starts', index], { kind: 'start' as const, index, id, name, at }),
  )
}

export function spotsOf(game: Game): Thing[] {
  return placeLists.flatMap((list) =>
    game[list].flatMap(({ name, spots }, index) =>
      spots.map(({ id, at }, spot) =>
        keyed([list, index, 'spots', spot], {
          kind: 'spot' as const,
          list,
          index,
          spot,
          of: spots.length,
          name,
          letter: `${letters[list]}${index + 1}`,
          at,
          id,
        }),
      ),
    ),
  )
}

export function obstaclesOf(game: Game): Thing[] {
  return game.field.obstacles.map(({ id, name, outline }, index) =>
    keyed(['field', 'obstacles', index], { kind: 'obstacle' as const, index, id, name, at: lowCorner(outline) }),
  )
}

export function cornersOf(game: Game, index: number): Thing[] {
  const obstacle = game.field.obstacles[index]
  if (!obstacle) return []
  const { id, name, outline } = obstacle
  return outline.map((at, corner) =>
    keyed(['field', 'obstacles', index, 'outline', corner], {
      kind: 'corner' as const,
      index,
      corner,
      of: outline.length,
      id,
      name,
      at,
    }),
  )
}

/** Everything that can be moved, in the order in which Tab reaches it. */
export const thingsOf = (game: Game): Thing[] => [
  ...startsOf(game),
  ...spotsOf(game),
  ...obstaclesOf(game).flatMap((thing) => [thing, ...cornersOf(game, thing.index)]),
]

const within = (value: number, most: number): number => rounded(Math.min(most, Math.max(0, value)))

/** The game with a thing moved to a point, kept on the field. Of obstacles the other half follows where it is `alike`. */
export function moved(game: Game, thing: Thing, [x, y]: Point, alike: boolean): Game {
  const { field } = game
  if (thing.kind === 'obstacle') {
    const { outline } = field.obstacles[thing.index]!
    const low = lowCorner(outline)
    const size = [0, 1].map((axis) => Math.max(...outline.map((corner) => corner[axis]!)) - low[axis]!)
    const to = [within(x, field.length - size[0]!), within(y, field.width - size[1]!)]
    const by: Point = [to[0]! - low[0], to[1]! - low[1]]
    return withObstacles(game, withObstacleMoved(field, { obstacle: thing.index, alike }, by))
  }
  const to: Point = [within(x, field.length), within(y, field.width)]
  if (thing.kind === 'corner')
    return withObstacles(game, withCornerAt(field, { obstacle: thing.index, corner: thing.corner, alike }, to))
  return withValueAt(game, [...thing.path, 'at'], to)
}

export const withObstacles = (game: Game, obstacles: Game['field']['obstacles']): Game => ({
  ...game,
  field: { ...game.field, obstacles },
})

/** The thing that a problem's path leads to, or is part of. */
export const isAbout = (thing: Thing, path: Place): boolean => {
  const key = path.join('/')
  return key === thing.key || key.startsWith(`${thing.key}/`)
}
