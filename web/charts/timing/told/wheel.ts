import type { WheelCurves, WheelInput, WheelQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { sayCurrent, sayEnergy, sayLength, sayRotation, saySpeed } from '../say.ts'
import { ifKnown, known, saidMotors, type Told } from './told.ts'

export function tellWheel(input: WheelInput<number>, quantities: Partial<WheelQuantities>): Told<WheelCurves> {
  const { says, names } = words().timingCharts
  const rim = (turning: number) => saySpeed((turning * input.wheelDiameter) / 2)
  const both = (turning: number) => `${sayRotation(turning)}, ${rim(turning)}`
  return {
    sentences: [says.wheel(sayLength(input.wheelDiameter)), ...(input.shot ? [says.thrown] : [])],
    measures: known([
      [names.diameter, sayLength(input.wheelDiameter)],
      [names.motors, saidMotors(input)],
      [names.target, both(input.target)],
      [names.freeSpeed, ifKnown(quantities.freeSpeed, sayRotation)],
      [names.afterShot, ifKnown(quantities.speedAfterShot, both)],
      [names.energy, ifKnown(quantities.energy, sayEnergy)],
      [names.exitSpeed, ifKnown(input.shot?.exitSpeed, saySpeed)],
    ]),
    state: ({ speed, current }, at) => [sayRotation(at.of(speed)), rim(at.of(speed)), sayCurrent(at.of(current))],
  }
}
