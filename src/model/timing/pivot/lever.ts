import { remark } from '../answer/remark.ts'
import type { CylinderPivotInput } from '../inputs.ts'
import { evenly } from '../numerics/trace.ts'
import type { Load, Place } from '../pneumatic/stroke.ts'
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
  const lengthAt = (turned: number) =>
    Math.sqrt(Math.max(0, squares - 2 * product * Math.cos(arm.angleAt(turned) + angle)))
  const first = lengthAt(0)
  const direction = lengthAt(arm.end) >= first ? 'extend' : 'retract'
  const out = direction === 'extend' ? 1 : -1
  // Of the arm's own angle one sine and one cosine serve for all three, because they are asked for thousands of times.
  const across = { cosine: Math.cos(angle), sine: Math.sin(angle) }
  const leverage = out * arm.sign * product
  const gravity = arm.sign * arm.weight
  const place: Place = { travel: 0, slope: 0, resistance: 0 }
  const load: Load = {
    direction,
    end: arm.end,
    inertia,
    at: (turned) => {
      const cosine = Math.cos(arm.angleAt(turned))
      const sine = Math.sin(arm.angleAt(turned))
      const length = Math.sqrt(Math.max(0, squares - 2 * product * (cosine * across.cosine - sine * across.sine)))
      place.travel = out * (length - first)
      place.slope = (leverage * (sine * across.cosine + cosine * across.sine)) / length
      place.resistance = gravity * cosine + friction
      return place
    },
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
    if (load.at(turned).slope <= 1e-6) {
      return remark(
        'deadCentre',
        'At {angle} rad the cylinder points at the pivot or pulls the other way, and can not turn the arm',
        { angle },
      )
    }
  }
  return null
}
