import type { Game } from '../../../../src/model/documents/types.ts'
import { keptAway } from '../../../../src/model/field/index.ts'
import type { Route } from '../../../../src/model/field/types.ts'
import type { System } from '../../../units/quantities.ts'
import { sayDistance, sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import type { Explanation } from '../../../words/explain.ts'
import { seconds } from '../../../words/format.ts'
import { sayAt, thingName } from './names.ts'
import type { Thing } from './things.ts'
import type { DrivingRobot } from './useAsked.ts'

/** The way between two points with its time: what the drive at top speed takes of it, and what the rest. */
export function explainRoute(
  route: Route,
  of: { game: Game; robot: DrivingRobot; from: Thing; to: Thing; system: System; source: string },
): Explanation {
  const text = words().explainDesigns.route
  const field = words().field
  const { robot, from, to, system } = of
  const { drive, footprint } = robot
  const cruise = route.length / drive.topSpeed
  const size = (value: number) => sayQuantity(value, 'length', system)
  return {
    title: text.title(thingName(from), thingName(to)),
    result: field.route.found(sayDistance(route.length, system), seconds(route.seconds)),
    formula: text.formula,
    parts: [
      {
        label: text.cruise,
        value: seconds(cruise),
        note: `${sayDistance(route.length, system)} / ${sayQuantity(drive.topSpeed, 'speed', system)}`,
      },
      { label: text.rest, value: seconds(route.seconds - cruise) },
    ],
    total: { label: text.total, value: seconds(route.seconds) },
    inputs: [
      { label: field.route.from, value: `${thingName(from)}: ${sayAt(from.at, system)}` },
      { label: field.route.to, value: `${thingName(to)}: ${sayAt(to.at, system)}` },
      { label: text.size, value: `${size(footprint.length)} × ${size(footprint.width)}` },
      { label: text.away, value: size(keptAway(of.game.field.clearance, footprint)) },
      { label: field.robot.topSpeed, value: sayQuantity(drive.topSpeed, 'speed', system) },
      { label: field.robot.acceleration, value: sayQuantity(drive.acceleration, 'acceleration', system) },
      { label: field.robot.braking, value: sayQuantity(drive.deceleration, 'acceleration', system) },
    ],
    source: of.source,
    otherwise: words().explainDesigns.otherwise.route,
    links: [
      ['/designs', words().explainDesigns.toDesigns],
      ['/trade-offs', words().explainDesigns.toTradeOffs],
    ],
  }
}
