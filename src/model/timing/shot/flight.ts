import { type Arrived, integrate, type Motion } from '../numerics/integrate.ts'

export interface Throw {
  speed: number
  /** Above level (rad). */
  angle: number
  /** Deceleration per square of the speed (1/m): air density · drag coefficient · cross-section / (2 · mass). */
  drag: number
  gravity: number
}

/** Of the state: level distance and height from the release (m), and their rates (m/s). */
export const along = 0
export const height = 1
export const alongRate = 2
export const heightRate = 3

/** A flight with quadratic drag until one of the events, or a minute. */
export function flight(thrown: Throw, until: Motion['until'], tolerance = 1e-10, keep = false): Arrived {
  const { speed, angle, drag, gravity } = thrown
  return integrate({
    rates: (at, rates) => {
      const slowing = drag * Math.sqrt(at[alongRate]! ** 2 + at[heightRate]! ** 2)
      rates[along] = at[alongRate]!
      rates[height] = at[heightRate]!
      rates[alongRate] = -slowing * at[alongRate]!
      rates[heightRate] = -gravity - slowing * at[heightRate]!
    },
    from: [0, 0, speed * Math.cos(angle), speed * Math.sin(angle)],
    until,
    longest: 60,
    tolerance,
    scale: [0.1, 0.1, 0.1, 0.1],
    keep,
  })
}

/** Until it is at a level distance. */
export const pastDistance = (distance: number) => (at: Float64Array) => at[along]! - distance

/** Until it falls through a height. */
export const fallenTo = (level: number) => (at: Float64Array) =>
  at[heightRate]! < 0 ? level - at[height]! : -1 - Math.abs(level - at[height]!)
