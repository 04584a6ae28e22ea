import { type Calculator, electricUnits, pneumaticUnits } from '../answer/calculator.ts'
import type { PivotCurves, PivotQuantities } from '../answers.ts'
import type { PivotInput } from '../inputs.ts'
import { cylinderSeconds, solveCylinder } from './byCylinder.ts'
import { motorSeconds, solveMotor } from './byMotor.ts'

/** An arm through an angle: geared motors against gravity, or a cylinder on a lever. */
export const pivot: Calculator<PivotInput<number>, PivotQuantities, PivotCurves> = {
  units: {
    ...electricUnits,
    ...pneumaticUnits,
    inertia: 'kg·m²',
    mass: 'kg',
    centre: 'm',
    from: 'rad',
    to: 'rad',
    friction: 'N·m',
    radius: 'm',
    offset: 'rad',
    'frame.0': 'm',
    'frame.1': 'm',
    closedLength: 'm',
    // Longer cylinders have more air on their far side.
    'cylinder.stroke': 'm',
  },
  seconds: (input) => (input.by === 'motor' ? motorSeconds(input) : cylinderSeconds(input)),
  solve: (input) => (input.by === 'motor' ? solveMotor(input) : solveCylinder(input)),
}
