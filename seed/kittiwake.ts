import type { Robot } from '../src/model/documents/types.ts'
import {
  adrift,
  dryDock,
  fromTheRamp,
  hangOnGantry,
  lognormal,
  range,
  setOnLightship,
  setOnPier,
  throwAtGantry,
} from './stages.ts'

/** Shearwater's sister without the hook: lighter, ready two weeks earlier, and driven for those two weeks. */
export const kittiwake: Robot = {
  format: 1,
  id: 'kittiwake',
  name: 'Kittiwake',
  footprint: { length: 0.88, width: 0.8 },
  drive: { topSpeed: 4, acceleration: 3.8, deceleration: 4.4, pace: range(1.03, 1.1, 2.75) },
  form: { spread: 1.12 },
  carries: { buoy: 1 },
  preload: { piece: 'buoy', count: 1 },
  collect: {
    outer: fromTheRamp(lognormal(1.2, 1.95), 0.82),
    channel: adrift(lognormal(3.2, 1.7), 0.72),
  },
  score: {
    gantry: [hangOnGantry(lognormal(1.2, 1.7), 0.89), throwAtGantry(lognormal(1.5, 1.8), 0.69)],
    piers: [setOnPier(lognormal(0.7, 1.5), 0.97)],
    lightship: [setOnLightship(lognormal(1.6, 1.9), 0.84)],
  },
  finish: { 'dry-dock': dryDock },
  autos: [
    {
      id: 'gantry-two',
      name: 'Two on the gantry',
      starts: ['quay-middle'],
      steps: [
        { at: 4.5, goal: 'gantry', piece: 'buoy', count: 1, success: 0.84, needsPrevious: false },
        { at: 13.5, goal: 'gantry', piece: 'buoy', count: 1, success: 0.58, needsPrevious: false },
      ],
      leaves: 0.98,
      endsAt: 'gantry.foot',
      holding: null,
      takes: [{ source: 'channel', count: 1 }],
    },
    {
      id: 'pier-one',
      name: 'One on the pier, then out',
      starts: ['quay-south'],
      steps: [{ at: 4, goal: 'piers', piece: 'buoy', count: 1, success: 0.95, needsPrevious: false }],
      leaves: 0.99,
      endsAt: 'channel.ramp',
      holding: null,
    },
  ],
  reliability: { absent: 0.01, stops: 0.04 },
  fouls: { minorPerMatch: 0.3, majorPerMatch: 0.05 },
  defence: { slowdown: 0.25, minorPerMinute: 0.5, majorPerMinute: 0.08 },
  budget: { mass: 47, cost: 3100, hours: 250, readyBy: '2027-02-05' },
}
