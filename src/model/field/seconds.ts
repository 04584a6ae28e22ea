import type { Drive } from '../documents/types.ts'

/** What the time of a piece of a route depends on. */
type Piece = { kind: 'line'; length: number } | { kind: 'arc'; length: number; radius: number; turn: number }

/**
 * Seconds to drive a route from rest to rest, without pace: trapezoidal, with separate acceleration and deceleration.
 *
 * On an arc of radius r that turns by φ the speed is at most √(acceleration · r / (1 − cos(φ/2))), independent of the
 * tangential limits: a U-turn is taken at radius r, a slight bend costs nothing. The highest speeds at the borders of
 * the pieces follow from a forward pass (accelerating) and a backward pass (braking); between two borders each piece is
 * a trapezoid, or a triangle where it is too short to reach its highest speed.
 *
 * Source: Biagiotti & Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), section 3.2.
 *
 * @example travelSeconds([{ kind: 'line', length: 10 }], { topSpeed: 4, acceleration: 2, deceleration: 2 }) // 4.5
 */
export function travelSeconds(segments: readonly Piece[], drive: Omit<Drive, 'pace'>): number {
  const { acceleration, deceleration } = drive
  const highest = segments.map((piece) => highestSpeed(piece, drive))
  const border = [0, ...highest.slice(1).map((speed, i) => Math.min(speed, highest[i]!)), 0]
  for (let i = 0; i < segments.length; i++) {
    border[i + 1] = Math.min(border[i + 1]!, Math.sqrt(border[i]! ** 2 + 2 * acceleration * segments[i]!.length))
  }
  for (let i = segments.length - 1; i >= 0; i--) {
    border[i] = Math.min(border[i]!, Math.sqrt(border[i + 1]! ** 2 + 2 * deceleration * segments[i]!.length))
  }
  return segments.reduce(
    (sum, { length }, i) => sum + pieceSeconds(length, border[i]!, border[i + 1]!, highest[i]!, drive),
    0,
  )
}

function highestSpeed(piece: Piece, { topSpeed, acceleration }: Omit<Drive, 'pace'>): number {
  if (piece.kind === 'line' || piece.turn === 0) return topSpeed
  // 1 − cos(φ/2), written so that a slight bend keeps its digits.
  const bend = 2 * Math.sin(piece.turn / 4) ** 2
  return Math.min(topSpeed, Math.sqrt((acceleration * piece.radius) / bend))
}

function pieceSeconds(
  length: number,
  first: number,
  last: number,
  highest: number,
  { acceleration, deceleration }: Omit<Drive, 'pace'>,
): number {
  if (length === 0) return 0
  const peak = Math.sqrt(
    (2 * acceleration * deceleration * length + deceleration * first ** 2 + acceleration * last ** 2) /
      (acceleration + deceleration),
  )
  const speed = Math.min(peak, highest)
  const changing = (speed - first) / acceleration + (speed - last) / deceleration
  if (peak <= highest) return changing
  const used = (speed ** 2 - first ** 2) / (2 * acceleration) + (speed ** 2 - last ** 2) / (2 * deceleration)
  return changing + (length - used) / speed
}
