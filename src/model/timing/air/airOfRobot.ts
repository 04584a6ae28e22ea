import { type AirOfTrip, pneumaticMechanisms, type StoredAir, sameLeg } from '../../documents/air.ts'
import { hardwareLinks } from '../../documents/hardware.ts'
import type { TimedLeg } from '../../documents/timing.ts'
import type { Game, Option, Robot } from '../../documents/types.ts'
import type { Path } from '../../errors.ts'
import type { AirOfRobot } from './overPlan.ts'
import { strokesOfUses, supplyNumbers } from './strokesOf.ts'

/** A robot's stored air as the plan takes it. A way to play without a routine takes none of it before teleop. */
export function airOfRobot(game: Game, { robot, auto }: Option, air: StoredAir): AirOfRobot {
  const legs = air.trips.filter(({ leg }, index) => air.trips.findIndex((other) => sameLeg(other.leg, leg)) === index)
  return {
    ...supplyNumbers(air),
    trips: legs.map(({ leg }) => ({
      leg,
      strokes: strokesOfUses(
        robot,
        air.trips.filter((other) => sameLeg(other.leg, leg)),
      ),
    })),
    before: {
      seconds: game.clock.auto + game.clock.pause,
      strokes: auto === null ? [] : strokesOfUses(robot, air.autonomous),
    },
  }
}

/** The leg in which something of a robot stands, by its path from the robot's root: `['score', goal, 0, …]`. */
export function legAt([kind, id, entry]: Path): TimedLeg {
  if (kind === 'collect') return { kind, source: String(id) }
  if (kind === 'finish') return { kind, finish: String(id) }
  return { kind: 'score', goal: String(id), entry: Number(entry) }
}

/**
 * What each kind of trip uses by the stages that name a pneumatic mechanism: once out and once back, however many stages of
 * the trip name it, because a second one is its way back.
 */
export function usesByStages(robot: Robot): AirOfTrip[] {
  const mechanisms = new Set(pneumaticMechanisms(robot).map(({ id }) => id))
  const uses: AirOfTrip[] = []
  for (const { link, path } of hardwareLinks(robot)) {
    const use = { leg: legAt(path), mechanism: link.mechanism, out: 1, back: 1 }
    if (mechanisms.has(link.mechanism) && !uses.some((other) => sameUse(other, use))) uses.push(use)
  }
  return uses
}

/** Whether two uses are of one mechanism in one kind of trip. */
export const sameUse = (a: AirOfTrip, b: AirOfTrip): boolean => a.mechanism === b.mechanism && sameLeg(a.leg, b.leg)
