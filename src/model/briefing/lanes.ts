import type { Game, Option, Point } from '../documents/types.ts'
import { ModelError } from '../errors.ts'
import { travel } from '../field/index.ts'

/** One way over the field for each of ours: from the source that it goes to, to the goal that it brings most to. */
export interface LaneRequest {
  game: Game
  robots: readonly { option: Option; source: string | null; goal: string | null }[]
}

/** Where several go to one place they stand on different spots of it, as far as it has so many. */
export function lanesOf({ game, robots }: LaneRequest): Point[][] {
  const taken = new Map<string, number>()
  const spotAt = (place: string | null): string | null => {
    const spots = [...game.sources, ...game.goals].find(({ id }) => id === place)?.spots ?? []
    if (place === null || spots.length === 0) return null
    const before = taken.get(place) ?? 0
    taken.set(place, before + 1)
    return spots[before % spots.length]!.id
  }
  return robots.map(({ option, source, goal }) => {
    const [from, to] = [spotAt(source), spotAt(goal)]
    if (from === null || to === null) return []
    try {
      return thinned(travel(game, option.robot, from, to).path)
    } catch (error) {
      // Nobody said how large the robot is: where this size finds no way, the real one may.
      if (error instanceof ModelError) return []
      throw error
    }
  })
}

/** Arcs come in steps of a centimetre, of which a drawing on a page needs every tenth. */
const thinned = (path: readonly Point[]): Point[] =>
  path.length < 30 ? [...path] : path.filter((_, k) => k % 10 === 0 || k === path.length - 1)
