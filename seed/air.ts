import type { HardwareLink, Mechanism, StoredAir } from '../src/model/documents/index.ts'
import type { Robot, Stage, Trip } from '../src/model/documents/types.ts'
import { usesByStages } from '../src/model/timing/index.ts'
import { slimCylinder, tank, valve } from './parts.ts'

type Cylinders = Mechanism<'cylinder'>

const pneumatic = {
  cylinder: slimCylinder,
  cylinders: 1,
  supply: valve,
  exhaust: { ...valve, conductance: 1e-9 },
  pressure: 501_325,
  ambient: 101_325,
  temperature: 293.15,
  cylinderFriction: { kind: 'range', low: 6, likely: 10, high: 14 },
  deadVolume: 0.000008,
  farSide: 'charged',
  direction: 'extend',
  stop: null,
} as const

const intake: Cylinders = {
  id: 'intake-cylinder',
  name: 'Intake, lowered by a cylinder',
  calculator: 'cylinder',
  input: { ...pneumatic, mass: 3, load: { kind: 'range', low: 5, likely: 10, high: 20 } },
}

const pusher: Cylinders = {
  id: 'hook-pusher',
  name: 'Pusher that hooks the buoy on',
  calculator: 'cylinder',
  input: { ...pneumatic, mass: 2, load: { kind: 'range', low: 45, likely: 52, high: 58 } },
}

/** Beside the stages: they keep the times that the team measured. */
const beside = ({ id }: Cylinders): HardwareLink => ({ mechanism: id, follows: false })

const linked = <T extends Trip>(trip: T, stage: string, mechanism: Cylinders): T => {
  if (!('stages' in trip)) return trip
  const put = (one: Stage): Stage => (one.id === stage && !one.hardware ? { ...one, hardware: beside(mechanism) } : one)
  return { ...trip, stages: trip.stages.map(put) }
}

/** Filled before the match, without a compressor: it does not quite last. */
const tanks: Omit<StoredAir, 'trips' | 'autonomous'> = {
  tank,
  tanks: 2,
  stored: 901_325,
  working: 501_325,
  ambient: 101_325,
  leak: 0.000001,
  compressor: null,
  low: 341_325,
  slower: 3,
}

/** The robot with stored air and the two cylinders that use it; a stage that has other hardware already keeps it. */
export function withAir(robot: Robot): Robot {
  const collect = Object.fromEntries(
    Object.entries(robot.collect).map(([id, trip]) => [id, linked(trip, 'lower', intake)]),
  )
  const gantry = (robot.score['gantry'] ?? []).map((entry) => linked(entry, 'hook-on', pusher))
  const moved: Robot = {
    ...robot,
    collect,
    score: { ...robot.score, gantry },
    mechanisms: [...(robot.mechanisms ?? []), intake, pusher],
  }
  const autonomous = [intake, pusher].map(({ id }) => ({ mechanism: id, out: 2, back: 2 }))
  return { ...moved, air: { ...tanks, trips: usesByStages(moved), autonomous } }
}
