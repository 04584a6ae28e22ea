import type { Robot } from '../src/model/documents/types.ts'
import { withMechanisms } from './mechanisms.ts'
import {
  adrift,
  dryDock,
  fixed,
  fromTheRamp,
  hangOnGantry,
  lognormal,
  range,
  setOnLightship,
  setOnPier,
  throwAtGantry,
} from './stages.ts'

/** The design that can do everything, the davit included, and pays for it in mass and in hours of practice. */
export const shearwater: Robot = withMechanisms({
  format: 1,
  id: 'shearwater',
  name: 'Shearwater',
  footprint: { length: 0.94, width: 0.86 },
  drive: { topSpeed: 3.8, acceleration: 3.4, deceleration: 4, pace: range(1, 1.15, 3) },
  form: { spread: 1.16 },
  carries: { buoy: 1 },
  preload: { piece: 'buoy', count: 1 },
  collect: {
    outer: fromTheRamp(lognormal(1.3, 2), 0.8),
    channel: adrift(lognormal(3.4, 1.7), 0.7),
  },
  score: {
    gantry: [hangOnGantry(lognormal(1.3, 1.7), 0.87), throwAtGantry(lognormal(1.6, 1.8), 0.66)],
    piers: [setOnPier(lognormal(0.7, 1.5), 0.96)],
    lightship: [setOnLightship(lognormal(1.7, 1.9), 0.82)],
  },
  finish: {
    'dry-dock': dryDock,
    davit: {
      stages: [
        { id: 'swing-out', name: 'Swing the hook out', duration: range(1.4, 1.8, 3), after: [] },
        { id: 'line-up', name: 'Line up with the davit', duration: lognormal(1.4, 1.5), after: ['drive'] },
        { id: 'latch', name: 'Latch', duration: lognormal(1.6, 1.6), after: ['swing-out', 'line-up'] },
        { id: 'lift', name: 'Lift clear of the floor', duration: range(3, 3.8, 6.5), after: ['latch'] },
        { id: 'lock', name: 'Lock the drum', duration: fixed(0.4), after: ['lift'] },
      ],
      success: 0.74,
      otherwise: 'dry-dock',
    },
  },
  autos: [
    {
      id: 'gantry-two',
      name: 'Two on the gantry',
      starts: ['quay-middle'],
      steps: [
        { at: 4.5, goal: 'gantry', piece: 'buoy', count: 1, success: 0.8, needsPrevious: false },
        { at: 14, goal: 'gantry', piece: 'buoy', count: 1, success: 0.5, needsPrevious: false },
      ],
      leaves: 0.97,
      endsAt: 'gantry.foot',
      holding: null,
      takes: [{ source: 'channel', count: 1 }],
    },
    {
      id: 'pier-one',
      name: 'One on the pier, then out',
      starts: ['quay-south'],
      steps: [{ at: 4, goal: 'piers', piece: 'buoy', count: 1, success: 0.94, needsPrevious: false }],
      leaves: 0.99,
      endsAt: 'channel.ramp',
      holding: null,
    },
  ],
  reliability: { absent: 0.02, stops: 0.06 },
  fouls: { minorPerMatch: 0.35, majorPerMatch: 0.06 },
  defence: { slowdown: 0.25, minorPerMinute: 0.5, majorPerMinute: 0.08 },
  budget: { mass: 54.5, cost: 3950, hours: 340, readyBy: '2027-02-19' },
})
