import type { Auto, Game, Point, Robot } from '../../../../src/model/documents/types.ts'
import { placeOf } from '../../../../src/model/field/index.ts'
import { apart } from './notes.ts'

export type PathPoint = NonNullable<Auto['path']>[number]

const hundredth = (value: number) => Math.round(value * 100) / 100
const tenth = (value: number) => Math.round(value * 10) / 10

/** A path's end, put inside of the field. */
export const onField = (game: Game, [x, y]: Point): Point => [
  hundredth(Math.min(game.field.length, Math.max(0, x))),
  hundredth(Math.min(game.field.width, Math.max(0, y))),
]

/**
 * A path with one more point at its end. The first stands where the routine begins; each next one is reached at half the
 * top speed, until somebody types when.
 */
export function withPoint(of: { game: Game; robot: Robot; auto: Auto }, at: Point | null): PathPoint[] {
  const { game, robot, auto } = of
  const path = auto.path ?? []
  const start = game.starts.find(({ id }) => id === auto.starts[0])?.at ?? [0, 0]
  const begun: PathPoint[] = path.length > 0 ? path : [[0, start[0], start[1]]]
  const [time, x, y] = begun.at(-1)!
  const end = placeOf(game, auto.endsAt)?.at
  const wanted = at ?? (end && apart(end, [x, y]) > 0.01 ? end : ([x + 0.5, y] as Point))
  if (at === null && path.length === 0 && !end) return begun
  const [toX, toY] = onField(game, wanted)
  const takes = Math.max(0.1, tenth(apart([toX, toY], [x, y]) / (robot.drive.topSpeed / 2)))
  return [...begun, [Math.min(60, tenth(time + takes)), toX, toY]]
}

/** Where the robot is on a path at a time: straight and even between its points. Null before and after. */
export function pointAt(path: readonly PathPoint[], time: number): Point | null {
  const index = path.findIndex(([t]) => t >= time)
  const [after, before] = [path[index], path[index - 1]]
  if (!after) return null
  if (!before) return after[0] === time ? [after[1], after[2]] : null
  const share = after[0] === before[0] ? 1 : (time - before[0]) / (after[0] - before[0])
  return [before[1] + share * (after[1] - before[1]), before[2] + share * (after[2] - before[2])]
}

export const pathLength = (path: readonly PathPoint[]): number =>
  path.slice(1).reduce((sum, [, x, y], index) => sum + apart([x, y], [path[index]![1], path[index]![2]]), 0)
