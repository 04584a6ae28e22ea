/**
 * A thrown piece without drag, in closed form. Angles are above level (rad), heights and distances from the release (m), down
 * is below 0.
 *
 * Source: any text on mechanics, uniform gravity; the parabola of safety for the least speed.
 */

/** Speed that meets a point at an angle; null where no speed does. v² = g·x² / (2·cos²α·(x·tan α − y)). */
export function speedToMeet({ x, y, angle, gravity }: { x: number; y: number; angle: number; gravity: number }) {
  const above = x * Math.tan(angle) - y
  return above > 0 ? Math.sqrt((gravity * x * x) / (2 * Math.cos(angle) ** 2 * above)) : null
}

/** Both angles that meet a point at a speed, the low one first; null where it is out of reach. */
export function anglesToMeet({ x, y, speed, gravity }: { x: number; y: number; speed: number; gravity: number }) {
  const square = speed ** 2
  const inside = square ** 2 - gravity * (gravity * x * x + 2 * y * square)
  if (inside < 0) return null
  const root = Math.sqrt(inside)
  return { low: Math.atan2(square - root, gravity * x), high: Math.atan2(square + root, gravity * x) }
}

/** Least speed that reaches a point at any angle: √(g·(y + √(x² + y²))), and that angle, half way between the point and upright. */
export function leastToMeet({ x, y, gravity }: { x: number; y: number; gravity: number }) {
  return { speed: Math.sqrt(gravity * (y + Math.hypot(x, y))), angle: (Math.atan2(y, x) + Math.PI / 2) / 2 }
}

/** Range and flight time down to a plane that lies `height` below the release, and the highest point above that plane. */
export function rangeOf({
  speed,
  angle,
  height,
  gravity,
}: {
  speed: number
  angle: number
  height: number
  gravity: number
}) {
  const up = speed * Math.sin(angle)
  const flight = (up + Math.sqrt(up ** 2 + 2 * gravity * height)) / gravity
  return { range: speed * Math.cos(angle) * flight, flight, apex: height + Math.max(0, up) ** 2 / (2 * gravity) }
}
