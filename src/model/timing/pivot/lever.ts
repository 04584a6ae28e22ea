import { remark } from '../answer/remark.ts'
import type { CylinderPivotInput } from '../inputs.ts'
import { evenly } from '../numerics/trace.ts'
import type { Load } from '../pneumatic/stroke.ts'
import type { Remark } from '../types.ts'
import type { Arm } from './arm.ts'

type Input = CylinderPivotInput<number>

/**
 * A cylinder between a hinge on the frame and a hinge on the arm. Its length follows from the triangle with the pivot, and the
 * leverage is how much it changes with the angle.
 */
export function leverOf(input: Input, arm: Arm): { load: Load; wrong: Remark | null } {
  const { frame, radius, offset, closedLength, cylinder, inertia, friction } = input
  const [forward, up] = frame
  const base = Math.hypot(forward, up)
  // Squares of both sides, twice their product, and the angle between arm and frame without the arm's own.
  const squares = base ** 2 + radius ** 2
  const product = base * radius
  const angle = offset - Math.atan2(up, forward)
  // Travel and leverage are asked for at the same place, thousands of times.
  const known = { turned: Number.NaN, length: Number.NaN }
  const lengthAt = (turned: number) => {
    if (known.turned !== turned) {
      known.turned = turned
      known.length = Math.sqrt(Math.max(0, squares - 2 * product * Math.cos(arm.angleAt(turned) + angle)))
    }
    return known.length
  }
  const slopeAt = (turned: number) => (arm.sign * product * Math.sin(arm.angleAt(turned) + angle)) / lengthAt(turned)
  const first = lengthAt(0)
  const direction = lengthAt(arm.end) >= first ? 'extend' : 'retract'
  const out = direction === 'extend' ? 1 : -1
  const load: Load = {
    direction,
    end: arm.end,
    inertia,
    travelAt: (turned) => out * (lengthAt(turned) - first),
    slopeAt: (turned) => out * slopeAt(turned),
    resistanceAt: (turned) => arm.gravityAt(turned) + friction,
    before: out > 0 ? first - closedLength : closedLength + cylinder.stroke - first,
  }
  // Between two dead centres the length only rises or only falls, so that both ends tell of all between.
  const half = (turned: number) => Math.floor((arm.angleAt(turned) + angle) / Math.PI)
  const places = half(0) === half(arm.end) ? [0, arm.end] : evenly(0, arm.end, 65)
  return { load, wrong: whyWrong(input, { arm, lengthAt, load, places }) }
}

function whyWrong(
  { closedLength, cylinder }: Input,
  lever: { arm: Arm; lengthAt(at: number): number; load: Load; places: number[] },
): Remark | null {
  const { arm, lengthAt, load, places } = lever
  for (const turned of places) {
    const length = lengthAt(turned)
    const angle = arm.angleAt(turned)
    if (length < closedLength - 1e-9 || length > closedLength + cylinder.stroke + 1e-9) {
      const text =
        'The cylinder does not fit: at {angle} rad its hinges are {length} m apart, and it has {low} to {high} m'
      return remark('cylinderDoesNotFit', text, {
        angle,
        length,
        low: closedLength,
        high: closedLength + cylinder.stroke,
      })
    }
    if (load.slopeAt(turned) <= 1e-6) {
      return remark(
        'deadCentre',
        'At {angle} rad the cylinder points at the pivot or pulls the other way, and can not turn the arm',
        { angle },
      )
    }
  }
  return null
}
