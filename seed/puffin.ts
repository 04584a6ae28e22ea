import type { Robot } from '../src/model/documents/types.ts'
import { adrift, dryDock, fromTheRamp, lognormal, range, setOnLightship, setOnPier } from './stages.ts'

/** Small, quick and cheap: a hopper of two buoys for the low piers and the lightship, and nothing high. */
export const puffin: Robot = {
  format: 1,
  id: 'puffin',
  name: 'Puffin',
  footprint: { length: 0.8, width: 0.72 },
  drive: { topSpeed: 4.4, acceleration: 4.1, deceleration: 4.8, pace: range(1, 1.1, 2.9) },
  form: { spread: 1.1 },
  carries: { buoy: 2 },
  preload: { piece: 'buoy', count: 1 },
  collect: {
    outer: hopper(fromTheRamp(lognormal(1.2, 2), 0.78)),
    channel: hopper(adrift(lognormal(2.9, 1.7), 0.72)),
  },
  score: {
    piers: [setOnPier(lognormal(1.3, 1.8), 0.93)],
    lightship: [setOnLightship(lognormal(1.6, 1.9), 0.78)],
  },
  finish: { 'dry-dock': dryDock },
  autos: [
    {
      id: 'pier-three',
      name: 'Preload and two more on the south pier',
      starts: ['quay-south'],
      steps: [
        { at: 3.5, goal: 'piers', piece: 'buoy', count: 1, success: 0.95, needsPrevious: false },
        { at: 14.5, goal: 'piers', piece: 'buoy', count: 2, success: 0.6, needsPrevious: false },
      ],
      leaves: 0.99,
      endsAt: 'piers.south',
      holding: null,
      takes: [{ source: 'channel', count: 2 }],
    },
  ],
  reliability: { absent: 0.01, stops: 0.03 },
  fouls: { minorPerMatch: 0.25, majorPerMatch: 0.04 },
  defence: { slowdown: 0.35, minorPerMinute: 0.6, majorPerMinute: 0.1 },
  budget: { mass: 38.5, cost: 2100, hours: 170, readyBy: '2027-01-29' },
}

/** Each buoy of the load is drawn in and seated in turn. */
function hopper(trip: Robot['collect'][string]): Robot['collect'][string] {
  if (!('stages' in trip)) return trip
  return {
    ...trip,
    stages: trip.stages.map((stage) => (stage.id === 'draw-in' ? { ...stage, each: true } : stage)),
  }
}
