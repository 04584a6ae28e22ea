import type { Chassis } from './chassis.ts'

/** A robot's way over a distance from rest. */
export interface Way {
  seconds: number
  /** Until braking begins (s); all of it where it passes. */
  runningSeconds: number
  peakSpeed: number
  at(seconds: number): { speed: number; distance: number; braking: boolean }
}

export function wayOf({ motion, deceleration }: Chassis, to: { distance: number; stops: boolean }): Way {
  const { distance } = to
  const runningSeconds = to.stops ? motion.toBrake(distance, deceleration) : motion.toDistance(distance)
  const peakSpeed = motion.speedAt(runningSeconds)
  const seconds = to.stops ? runningSeconds + peakSpeed / deceleration : runningSeconds
  return {
    seconds,
    runningSeconds,
    peakSpeed,
    at: (time) => {
      if (time <= runningSeconds)
        return { speed: motion.speedAt(time), distance: motion.distanceAt(time), braking: false }
      const left = Math.max(0, seconds - time)
      return { speed: deceleration * left, distance: distance - (deceleration * left ** 2) / 2, braking: true }
    },
  }
}
