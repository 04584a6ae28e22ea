import type { DriveInput, DriveQuantities, MotionCurves } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import { wayLayout } from '../geometry/way.ts'
import { sayAcceleration, sayCurrent, sayLength, sayMass, saySpeed } from '../say.ts'
import { ifKnown, known, saidMotors, type Told } from './told.ts'

/** `width`: of the picture (px), which decides how much larger than its way the robot is drawn. */
export function tellDrive(
  input: DriveInput<number>,
  quantities: Partial<DriveQuantities>,
  width: number,
): Told<MotionCurves> {
  const { says, names } = words().timingCharts
  const { enlarged } = wayLayout(input, width)
  return {
    sentences: [
      says.drive(sayLength(input.wheelDiameter), sayLength(input.distance)),
      says.frame,
      ...(enlarged > 1.05 ? [says.enlarged(plain(enlarged, enlarged < 10 ? 1 : 0))] : []),
    ],
    measures: known([
      [names.distance, sayLength(input.distance)],
      [names.wheels, sayLength(input.wheelDiameter)],
      [names.mass, sayMass(input.mass)],
      [names.motors, saidMotors(input)],
      [names.topSpeed, ifKnown(quantities.topSpeed, saySpeed)],
      [names.peakSpeed, ifKnown(quantities.peakSpeed, saySpeed)],
      [names.acceleration, ifKnown(quantities.acceleration, sayAcceleration)],
      [names.deceleration, input.stops ? ifKnown(quantities.deceleration, sayAcceleration) : null],
    ]),
    state: ({ distance, speed, current }, at) => [
      sayLength(at.of(distance)),
      saySpeed(at.of(speed)),
      sayCurrent(at.of(current)),
    ],
  }
}
