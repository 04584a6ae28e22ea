import type { Field, Point } from '../../../src/model/documents/types.ts'
import { symmetricImage } from '../../../src/model/field/symmetry.ts'
import type { Alliance } from '../../../src/model/scouting/types.ts'

/** How somebody sees the field: whose robot it is, and on which side of them red's wall stands. */
export interface View {
  alliance: Alliance
  redWall: 'left' | 'right'
}

type Ground = Pick<Field, 'length' | 'width' | 'symmetry'>

/**
 * From the alliance's own coordinates (m) to those of the drawing: x to the right, y away from whoever looks. Whoever has red's
 * wall on the right sits on the other side, so that the whole field is turned by half a turn.
 */
export function seenFrom(field: Ground, { alliance, redWall }: View, point: Point): Point {
  const [x, y] = alliance === 'red' ? point : symmetricImage(field, point)
  return redWall === 'left' ? [x, y] : [field.length - x, field.width - y]
}

/** The way back: where on the field, in the alliance's own coordinates, something was touched. */
export function touchedAt(field: Ground, { alliance, redWall }: View, [x, y]: Point): Point {
  const onField: Point = redWall === 'left' ? [x, y] : [field.length - x, field.width - y]
  return alliance === 'red' ? onField : symmetricImage(field, onField)
}

/** The nearest of some points, within a distance (m). */
export function nearest<T extends { at: Point }>(of: readonly T[], [x, y]: Point, within: number): T | null {
  const distance = ({ at }: T) => Math.hypot(at[0] - x, at[1] - y)
  const best = of.reduce<T | null>((found, each) => (found && distance(found) <= distance(each) ? found : each), null)
  return best && distance(best) <= within ? best : null
}
