import type { CylinderCurves, CylinderInput, CylinderQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { cylinderView } from '../drawings/CylinderDrawing.tsx'
import { tubeOf } from '../geometry/tube.ts'
import { sayForce, sayLength, sayMass, sayPressure, saySpeed } from '../say.ts'
import { ifKnown, known, type Told } from './told.ts'

/** `width`: of the picture (px), which decides whether it is drawn thicker than to scale. */
export function tellCylinder(
  input: CylinderInput<number>,
  quantities: Partial<CylinderQuantities>,
  width: number,
): Told<CylinderCurves> {
  const { says, names, marks } = words().timingCharts
  const { bore, rod, stroke } = input.cylinder
  const tube = tubeOf(input)
  const { across, perMetre } = cylinderView(tube, width)
  return {
    sentences: [
      says.cylinder(input.cylinders, sayLength(bore), sayLength(stroke)),
      ...(across > perMetre * 1.02 ? [says.thick] : []),
      ...(tube.stop === null ? [] : [says.stop(sayLength(Math.abs(tube.to - tube.from)))]),
      says.darker,
    ],
    measures: known([
      [names.bore, sayLength(bore)],
      [names.rod, sayLength(rod)],
      [names.stroke, sayLength(stroke)],
      [names.travel, sayLength(Math.abs(tube.to - tube.from))],
      [names.mass, sayMass(input.mass)],
      [names.load, sayForce(input.load)],
      [names.force, ifKnown(quantities.force, sayForce)],
      [names.endSpeed, ifKnown(quantities.endSpeed, saySpeed)],
    ]),
    state: ({ distance, speed, pressure, backPressure }, at) => [
      sayLength(at.of(distance)),
      saySpeed(at.of(speed)),
      marks.pressures(sayPressure(at.of(pressure)), sayPressure(at.of(backPressure))),
    ],
  }
}
