import type { Robot, Trip } from '../../../src/model/documents/types.ts'
import type { Worth } from '../../../src/model/plan/types.ts'
import type { StripLeg } from '../../charts/stripLayout.ts'
import { sameWorthLeg, stageNames, stageRepeats, tripOf } from './cycle.ts'
import { presentReport } from './present.ts'
import type { Live } from './useLive.ts'

/** The legs of a strip with the times that the robot has now, and what a second of each stage is worth as far as known. */
export const stripLegs = (legs: Live['legs'], robot: Robot, worth: readonly Worth[]): StripLeg[] =>
  legs.map(({ leg, report, robot: reported }) => {
    const [before, now] = [tripOf(reported, leg), tripOf(robot, leg)]
    return {
      id: leg.id,
      name: leg.name,
      report: before && now ? presentReport(report, before, now, leg.load) : report,
      stageNames: stageNames(now),
      repeats: stageRepeats(now, leg.load),
      hardware: hardwareOf(robot, now),
      worth: Object.fromEntries(
        worth
          .filter((entry) => sameWorthLeg(entry.leg, leg.worth))
          .map((entry) => [entry.stage, entry.pointsPerSecond]),
      ),
    }
  })

/** The stages of a trip, and the drive, that name a mechanism, and whether they follow it. */
const hardwareOf = (robot: Robot, trip: Trip | undefined): { [stage: string]: boolean } =>
  Object.fromEntries(
    [{ id: 'drive', hardware: robot.drive.hardware }, ...(trip && 'stages' in trip ? trip.stages : [])].flatMap(
      ({ id, hardware }) => (hardware ? [[id, hardware.follows]] : []),
    ),
  )
