import { ModelError } from '../../../../src/model/errors.ts'
import type { ShotInput } from '../../../../src/model/timing/index.ts'
import { evenly } from '../../../../src/model/timing/numerics/trace.ts'
import { throwOf } from '../../../../src/model/timing/shot/aim.ts'
import { flight, height, pastDistance } from '../../../../src/model/timing/shot/flight.ts'
import type { Point } from './swing.ts'

type Input = ShotInput<number>

/** A path above the floor, and whether the floor ends it before the opening. */
export interface Path {
  points: Point[]
  lands: boolean
}

const drawn = 41
/** Error allowed per step: a steep throw makes a hundred times as much of it at the opening. */
const enough = 1e-7

/**
 * How a piece flies from its release up to the opening's distance, or to the floor. Level distance and height (m). Null where
 * the air stops it so hard that its flight can not be followed.
 */
export function pathOf(input: Input, speed: number, angle = input.angle): Path | null {
  try {
    return followed(input, speed, angle)
  } catch (error) {
    if (error instanceof ModelError && error.code === 'overBudget') return null
    throw error
  }
}

function followed(input: Input, speed: number, angle: number): Path {
  const { releaseHeight, distance } = input
  const thrown = { ...throwOf(input, speed), angle }
  const floor = (at: Float64Array) => -at[height]! - releaseHeight
  // A piece that starts on the floor has not landed there.
  const until = releaseHeight > 0 || angle > 0 ? [pastDistance(distance), floor] : [pastDistance(distance)]
  const { seconds, trace, event } = flight(thrown, until, enough, true)
  const points = evenly(0, seconds, drawn).map((time): Point => {
    const at = trace.at(time)
    return [at[0]!, Math.max(0, releaseHeight + at[1]!)]
  })
  return { points, lands: event === 1 }
}

/** What the errors of speed and angle can make of a throw: the lowest and the highest of its corners over the distance. */
export interface Band {
  lower: Point[]
  upper: Point[]
}

/** Null where there are no errors, or a corner can not be followed. It ends where the first of its corners does. */
export function bandOf(input: Input, speed: number): Band | null {
  const { speedError, angleError, angle } = input
  if (speedError === 0 && angleError === 0) return null
  const corners = [-1, 1].flatMap((a) =>
    [-1, 1].map((b) => pathOf(input, speed * (1 + a * speedError), angle + b * angleError)),
  )
  const paths = corners.flatMap((path) => (path ? [path.points] : []))
  if (paths.length < corners.length) return null
  const end = Math.min(input.distance, ...paths.map((points) => points.at(-1)![0]))
  // An upright throw that errs backwards has no band in front of it.
  if (!(end > 1e-3)) return null
  const places = evenly(0, end, drawn)
  const heights = places.map((x) => paths.map((points) => heightAt(points, x)))
  return {
    lower: places.map((x, i): Point => [x, Math.min(...heights[i]!)]),
    upper: places.map((x, i): Point => [x, Math.max(...heights[i]!)]),
  }
}

/** Height of a path that runs forwards, straight between its points. */
export function heightAt(points: readonly Point[], x: number): number {
  const next = points.findIndex(([at]) => at >= x)
  if (next <= 0) return points[next === 0 ? 0 : points.length - 1]![1]
  const [[x0, y0], [x1, y1]] = [points[next - 1]!, points[next]!]
  return x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}

/** The edges of the opening: what stands above and below the gap, or before and behind the ring. */
export function openingEdges({ opening, distance, targetHeight }: Input): [Point, Point] | null {
  if (!opening) return null
  const half = opening.size / 2
  return opening.lies === 'upright'
    ? [
        [distance, targetHeight - half],
        [distance, targetHeight + half],
      ]
    : [
        [distance - half, targetHeight],
        [distance + half, targetHeight],
      ]
}

/** The axis of the wheel that throws: square to the throw, below the piece. */
export function wheelBelow({ releaseHeight, angle, wheelDiameter, pieceDiameter }: Input): Point {
  const reach = (wheelDiameter + pieceDiameter) / 2
  return [reach * Math.sin(angle), releaseHeight - reach * Math.cos(angle)]
}
