import type { Game } from '../../../../src/model/documents/types.ts'
import { withoutCorner, withoutObstacle } from './obstacles.ts'
import { type Thing, withObstacles } from './things.ts'

/** The game without a thing, and the key of what is chosen next; null where the game needs it. */
export function without(game: Game, thing: Thing, alike: boolean): { game: Game; key: string | null } | null {
  switch (thing.kind) {
    case 'start': {
      const starts = game.starts.filter((_, index) => index !== thing.index)
      if (starts.length === 0) return null
      return { game: { ...game, starts }, key: `starts/${Math.min(thing.index, starts.length - 1)}` }
    }
    case 'spot': {
      const spots = game[thing.list][thing.index]!.spots.filter((_, spot) => spot !== thing.spot)
      if (spots.length === 0) return null
      const places = game[thing.list].map((place, index) => (index === thing.index ? { ...place, spots } : place))
      const next = Math.min(thing.spot, spots.length - 1)
      return { game: { ...game, [thing.list]: places }, key: `${thing.list}/${thing.index}/spots/${next}` }
    }
    case 'corner': {
      const obstacles = withoutCorner(game.field, { obstacle: thing.index, corner: thing.corner, alike })
      return obstacles && { game: withObstacles(game, obstacles), key: `field/obstacles/${thing.index}` }
    }
    case 'obstacle':
      return {
        game: withObstacles(game, withoutObstacle(game.field, { obstacle: thing.index, alike })),
        key: null,
      }
  }
}
