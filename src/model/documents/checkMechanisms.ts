import type { Path, Problem } from '../errors.ts'
import { idSet, idsOf, known, unique } from './checkIds.ts'
import { hardwareLinks } from './hardware.ts'
import type { Robot } from './types.ts'

/** Mechanisms have different ids, and what says that its numbers come from one must name one that the robot has. */
export function checkMechanisms(robot: Robot): Problem[] {
  const mechanisms = robot.mechanisms ?? []
  const all = idSet(mechanisms)
  const at = (path: Path): Path => [...path, 'hardware', 'mechanism']
  const { hardware } = robot.drive
  const drives = idSet(mechanisms.filter(({ calculator }) => calculator === 'drive'))
  return [
    ...unique(idsOf(mechanisms, ['mechanisms']), 'mechanisms'),
    ...(hardware
      ? known(hardware.mechanism, drives, { path: at(['drive']), noun: 'drive among the robot’s mechanisms' })
      : []),
    ...hardwareLinks(robot).flatMap(({ link, path }) =>
      known(link.mechanism, all, { path: at(path), noun: 'mechanism of the robot' }),
    ),
  ]
}
