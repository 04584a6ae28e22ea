import { within } from '../../../../src/model/documents/index.ts'
import type { Auto, Game, Point, Robot } from '../../../../src/model/documents/types.ts'
import type { Problem } from '../../../../src/model/errors.ts'
import { placeOf } from '../../../../src/model/field/index.ts'
import type { System } from '../../../units/quantities.ts'
import { sayQuantity } from '../../../units/write.ts'
import { placeName, spotName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'

/** Points this near each other (m) are the same place. */
const near = 0.15
/** A path is drawn by hand: a top speed is not exceeded by less than this. */
const slack = 1.02

export const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** Which side of the line from a to b a point lies on. */
const side = (a: Point, b: Point, of: Point) =>
  Math.sign((b[0] - a[0]) * (of[1] - a[1]) - (b[1] - a[1]) * (of[0] - a[0]))

/** Whether the straight run from a to b crosses an outline's edge. */
const crosses = (outline: readonly Point[], a: Point, b: Point): boolean =>
  outline.some((corner, index) => {
    const next = outline[(index + 1) % outline.length]!
    return side(a, b, corner) * side(a, b, next) < 0 && side(corner, next, a) * side(corner, next, b) < 0
  })

/**
 * What can not be meant in a routine, though a plan could be made of it: steps out of order, more scored than held, a path
 * that does not fit. With the place of each; they are said beside the fields and forbid nothing.
 */
export function routineNotes(game: Game, robot: Robot, system: System): Problem[] {
  return robot.autos.flatMap((auto, index) =>
    within(['autos', index], [...stepNotes(game, robot, auto), ...pathNotes(game, robot, auto, system)]),
  )
}

function stepNotes(game: Game, robot: Robot, auto: Auto): Problem[] {
  const texts = words().routines.steps
  const scored = new Map<string, number>()
  return auto.steps.flatMap((step, index): Problem[] => {
    const before = auto.steps[index - 1]
    const sum = (scored.get(step.piece) ?? 0) + step.count
    scored.set(step.piece, sum)
    const preload = robot.preload?.piece === step.piece ? robot.preload.count : 0
    const taken = (auto.takes ?? []).filter(
      ({ source }) => game.sources.find(({ id }) => id === source)?.piece === step.piece,
    )
    const had = preload + taken.reduce((total, { count }) => total + count, 0)
    return [
      ...(before && step.at < before.at
        ? [{ path: ['steps', index, 'at'], message: texts.early(seconds(before.at)) }]
        : []),
      ...(sum > had
        ? [{ path: ['steps', index, 'count'], message: texts.many(sum, had, placeName(game, step.piece)) }]
        : []),
    ]
  })
}

function pathNotes(game: Game, robot: Robot, auto: Auto, system: System): Problem[] {
  const texts = words().routines.path
  const path = auto.path ?? []
  const [first, last] = [path[0], path.at(-1)]
  if (!first || !last) return []
  const notes = path.flatMap(([t, x, y], index): Problem[] => {
    const before = path[index - 1]
    const at = ['path', index]
    if (x < 0 || y < 0 || x > game.field.length || y > game.field.width)
      return [{ path: [...at, 1], message: texts.outside }]
    if (t > game.clock.auto) return [{ path: [...at, 0], message: texts.late(seconds(game.clock.auto)) }]
    if (!before) return []
    if (t <= before[0]) return [{ path: [...at, 0], message: texts.order(seconds(before[0])) }]
    const speed = apart([x, y], [before[1], before[2]]) / (t - before[0])
    const through = game.field.obstacles.find(({ outline }) => crosses(outline, [before[1], before[2]], [x, y]))
    if (through) return [{ path: [...at, 1], message: texts.through(through.name) }]
    if (speed <= robot.drive.topSpeed * slack) return []
    const say = (value: number) => sayQuantity(value, 'speed', system, 1)
    return [{ path: [...at, 0], message: texts.fast(say(speed), say(robot.drive.topSpeed)) }]
  })
  const starts = game.starts.filter(({ id }) => auto.starts.includes(id))
  if (starts.length > 0 && !starts.some(({ at }) => apart(at, [first[1], first[2]]) <= near))
    notes.push({ path: ['path'], message: texts.start })
  const end = placeOf(game, auto.endsAt)
  if (end && path.length > 1 && apart(end.at, [last[1], last[2]]) > near)
    notes.push({ path: ['path'], message: texts.end(spotName(game, auto.endsAt)) })
  return notes
}
