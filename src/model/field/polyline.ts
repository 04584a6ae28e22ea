import type { Point } from '../documents/types.ts'
import type { Segment } from './types.ts'

/** A route as a line of points for drawing: arcs have one at least every centimetre. */
export function polyline(from: Point, segments: readonly Segment[]): Point[] {
  const points: Point[] = [from]
  for (const segment of segments) {
    if (segment.kind === 'line') points.push(segment.to)
    else points.push(...arcPoints(segment))
  }
  return points
}

function arcPoints({ length, radius, turn, centre, startAngle, direction }: Segment & { kind: 'arc' }): Point[] {
  const steps = Math.max(1, Math.ceil(length / 0.01))
  return Array.from({ length: steps }, (_, i) => {
    const angle = startAngle + (direction * turn * (i + 1)) / steps
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
  })
}
