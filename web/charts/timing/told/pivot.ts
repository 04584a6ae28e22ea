import type { PivotCurves, PivotInput, PivotQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { linkageAt } from '../geometry/linkage.ts'
import { armShape } from '../geometry/swing.ts'
import { sayAngle, sayCurrent, sayInertia, sayLength, sayMass, sayPressure, sayTorque, sayTurning } from '../say.ts'
import { ifKnown, known, type Measures, saidMotors, type Told } from './told.ts'

/** `angle`: at which the arm is drawn (rad). */
export function tellPivot(
  input: PivotInput<number>,
  quantities: Partial<PivotQuantities>,
  angle: number,
): Told<PivotCurves> {
  const { names, marks } = words().timingCharts
  return {
    sentences: sentencesOf(input, angle),
    measures: [
      ...known([
        [names.from, sayAngle(input.from)],
        [names.to, sayAngle(input.to)],
        [names.stops, input.stops && `${sayAngle(input.stops.low)}, ${sayAngle(input.stops.high)}`],
        [names.mass, sayMass(input.mass)],
        [names.centre, sayLength(input.centre)],
        [names.gyration, sayLength(armShape(input).gyration)],
        [names.gravity, ifKnown(quantities.gravityTorque, sayTorque)],
        [names.startTorque, ifKnown(quantities.startTorque, sayTorque)],
        [names.brakingFrom, ifKnown(quantities.brakingFrom, sayAngle)],
        [names.endSpeed, ifKnown(quantities.endSpeed, sayTurning)],
      ]),
      ...turnedBy(input, quantities),
    ],
    state: ({ angle: angles, speed, current, pressure, backPressure }, at) => [
      sayAngle(at.of(angles)),
      sayTurning(at.of(speed)),
      ...(current.length > 0 ? [sayCurrent(at.of(current))] : []),
      ...(pressure.length > 0 ? [marks.pressures(sayPressure(at.of(pressure)), sayPressure(at.of(backPressure)))] : []),
    ],
  }
}

function sentencesOf(input: PivotInput<number>, angle: number): string[] {
  const { says } = words().timingCharts
  const { impossibleInertia } = armShape(input)
  const { stops } = input
  const fits = input.by === 'cylinder' ? linkageAt(input, angle).fits : 'yes'
  return [
    says.pivot(sayAngle(input.from), sayAngle(input.to)),
    ...(input.by === 'cylinder' ? [says.byCylinder] : []),
    ...(stops ? [says.stops(sayAngle(stops.low), sayAngle(stops.high))] : []),
    says.mass,
    ...(fits === 'yes' ? [] : [says[fits]]),
    ...(impossibleInertia ? [says.inertia(sayInertia(input.mass * input.centre ** 2))] : []),
  ]
}

function turnedBy(input: PivotInput<number>, { strokeUsed }: Partial<PivotQuantities>): Measures {
  const { names } = words().timingCharts
  if (input.by === 'motor') return [[names.motors, saidMotors(input)]]
  const { bore, rod, stroke } = input.cylinder
  return known([
    [names.lever, sayLength(input.radius)],
    [names.hinges, [input.from, input.to].map((angle) => sayLength(linkageAt(input, angle).length)).join(' → ')],
    [names.bore, sayLength(bore)],
    [names.rod, sayLength(rod)],
    [names.stroke, sayLength(stroke)],
    [names.strokeUsed, ifKnown(strokeUsed, sayLength)],
  ])
}
