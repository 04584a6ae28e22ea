import type { DriveInput } from '../../../../src/model/timing/index.ts'

/** How a drive is laid out: a robot and the way that it drives, from left to right. Pixels. */
export interface WayLayout {
  /** Pixels per metre of the robot, and of the way; the robot is drawn larger than to scale on a long way. */
  robotPerMetre: number
  perMetre: number
  /** How many times larger. */
  enlarged: number
  robotWidth: number
  robotHeight: number
  /** Of the wheels (px). */
  radius: number
  /** Where the robot's middle is after so many metres. */
  x(metres: number): number
}

/** A frame that nobody gives us (m): this long, or what its wheels need. */
const usualLength = 0.8
const [smallest, largest] = [46, 150]
const edge = 14

export function wayLayout({ distance, wheelDiameter }: DriveInput<number>, width: number): WayLayout {
  const length = Math.max(usualLength, 2.4 * wheelDiameter)
  const room = Math.max(120, width - 2 * edge)
  const robotWidth = Math.min(largest, Math.max(smallest, (length * room) / (distance + length)))
  const robotPerMetre = robotWidth / length
  const way = Math.min(room - robotWidth, distance * robotPerMetre)
  const perMetre = way / distance
  const start = edge + (room - robotWidth - way) / 2 + robotWidth / 2
  const radius = (wheelDiameter / 2) * robotPerMetre
  return {
    robotPerMetre,
    perMetre,
    enlarged: robotPerMetre / perMetre,
    robotWidth,
    robotHeight: Math.max(radius * 2, radius * 0.9 + 0.28 * robotWidth),
    radius,
    x: (metres) => start + metres * perMetre,
  }
}
