import type { MotionCurves, RollersInput, RollersQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import { sayCurrent, sayLength, sayMass, saySpeed } from '../say.ts'
import { ifKnown, known, saidMotors, type Told } from './told.ts'

export function tellRollers(input: RollersInput<number>, quantities: Partial<RollersQuantities>): Told<MotionCurves> {
  const { says, names } = words().timingCharts
  return {
    sentences: [says.rollers(sayLength(input.rollerDiameter), sayLength(input.travel))],
    measures: known([
      [names.travel, sayLength(input.travel)],
      [names.rollers, sayLength(input.rollerDiameter)],
      [names.mass, sayMass(input.pieceMass)],
      [names.motors, saidMotors(input)],
      [names.surfaceSpeed, ifKnown(quantities.surfaceSpeed, saySpeed)],
      [names.pieceSpeed, ifKnown(quantities.pieceSpeed, saySpeed)],
      [names.ratio, ifKnown(quantities.ratio, (ratio) => plain(ratio, 2))],
      [names.sliding, ifKnown(quantities.slidingDistance, sayLength)],
    ]),
    state: ({ distance, speed, current }, at) => [
      sayLength(at.of(distance)),
      saySpeed(at.of(speed)),
      sayCurrent(at.of(current)),
    ],
  }
}
