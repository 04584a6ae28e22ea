import type { Path } from '../errors.ts'
import type { HardwareLink } from './mechanism.ts'
import type { Robot, Stage, Trip } from './types.ts'

/** A robot's trips with where they stand in it. */
export function tripsOf(robot: Robot): { trip: Trip; path: Path }[] {
  return [
    ...Object.entries(robot.collect).map(([id, trip]) => ({ trip, path: ['collect', id] })),
    ...Object.entries(robot.score).flatMap(([id, entries]) =>
      entries.map((trip, index) => ({ trip, path: ['score', id, index] })),
    ),
    ...Object.entries(robot.finish).map(([id, trip]) => ({ trip, path: ['finish', id] })),
  ]
}

/** A stage whose time comes from a mechanism, and where it stands in the robot. */
export interface LinkedStage {
  stage: Stage
  link: HardwareLink
  path: Path
}

/** Stages whose time comes, or could come, from a mechanism of the robot; the drive's own link is not among them. */
export function hardwareLinks(robot: Robot): LinkedStage[] {
  return tripsOf(robot).flatMap(({ trip, path }) =>
    'stages' in trip
      ? trip.stages.flatMap((stage, index) =>
          stage.hardware ? [{ stage, link: stage.hardware, path: [...path, 'stages', index] }] : [],
        )
      : [],
  )
}
