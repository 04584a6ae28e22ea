import type { ShotCurves, ShotInput, ShotQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import { drawnSpeed } from '../drawings/ShotDrawing.tsx'
import { pathOf } from '../geometry/throws.ts'
import { degrees, sayAngle, sayLength, sayMass, sayRotation, saySpeed } from '../say.ts'
import { ifKnown, known, type Told } from './told.ts'

export function tellShot(input: ShotInput<number>, quantities: Partial<ShotQuantities>): Told<ShotCurves> {
  const { names, says } = words().timingCharts
  return {
    sentences: sentencesOf(input, quantities),
    measures: known([
      [names.distance, sayLength(input.distance)],
      [names.release, sayLength(input.releaseHeight)],
      [names.angle, sayAngle(input.angle)],
      [names.targetHeight, sayLength(input.targetHeight)],
      [names.opening, ifKnown(input.opening?.size, sayLength)],
      [names.mass, sayMass(input.pieceMass)],
      [names.exitSpeed, ifKnown(quantities.exitSpeed, saySpeed)],
      [names.wheelSpeed, ifKnown(quantities.wheelSpeed, sayRotation)],
      [names.apex, ifKnown(quantities.apex, sayLength)],
      [names.arrivalAngle, ifKnown(quantities.arrivalAngle, sayAngle)],
      [names.margin, ifKnown(quantities.margin, sayLength)],
    ]),
    state: ({ distance, height }, at) => [
      `${names.distance} ${sayLength(at.of(distance))}`,
      at.of(height) < 0 ? says.onFloor : `${names.height} ${sayLength(at.of(height))}`,
    ],
  }
}

function sentencesOf(input: ShotInput<number>, quantities: Partial<ShotQuantities>): string[] {
  const { says } = words().timingCharts
  const { speedError, angleError } = input
  const speed = drawnSpeed({ input, quantities })
  const path = speed === null ? null : pathOf(input, speed)
  const errs = speed !== null && (speedError > 0 || angleError > 0)
  return [
    says.shot(sayLength(input.releaseHeight), sayAngle(input.angle), sayLength(input.distance)),
    ...(errs ? [says.band(`${plain(speedError * 100, 1)}\u00a0%`, `${plain(degrees(angleError), 1)}°`)] : []),
    ...(path?.lands ? [says.lands(sayLength(path.points.at(-1)![0]))] : []),
  ]
}
