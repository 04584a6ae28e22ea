/** Where a robot's centre is over time: [t, x, y] with rising t, straight and even between them, standing before and after. */
export type Motion = readonly (readonly [t: number, x: number, y: number])[]

/**
 * When two robots are first nearer than `within` (m), and how near they come at all until `end` (s); null where never.
 * In closed form: between two of their points of time both go straight, so that their squared distance is a parabola.
 */
export function firstMeeting(
  [a, b]: readonly [Motion, Motion],
  within: number,
  end: number,
): { at: number; distance: number } | null {
  const inside = [...a, ...b].map(([t]) => t).filter((t) => t > 0 && t < end)
  const times = [...new Set([0, ...inside, end])].sort((one, other) => one - other)
  let at: number | null = null
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k + 1 < times.length; k++) {
    const span: [number, number] = [times[k]!, times[k + 1]!]
    const course = courseOf(span.map((t) => apart(a, b, t)) as [Gap, Gap])
    least = Math.min(least, course.least)
    at ??= course.least < within ? span[0] + course.enters(within) * (span[1] - span[0]) : null
  }
  return at === null ? null : { at, distance: least }
}

type Gap = readonly [x: number, y: number]

function apart(a: Motion, b: Motion, t: number): Gap {
  const [ax, ay] = placeAt(a, t)
  const [bx, by] = placeAt(b, t)
  return [bx - ax, by - ay]
}

function placeAt(motion: Motion, t: number): Gap {
  const next = motion.findIndex(([time]) => time > t)
  const [, x, y] = motion.at(next < 0 ? -1 : Math.max(0, next - 1))!
  if (next <= 0) return [x, y]
  const [before] = motion[next - 1]!
  const [after, toX, toY] = motion[next]!
  const share = (t - before) / (after - before)
  return [x + share * (toX - x), y + share * (toY - y)]
}

/** A gap that goes evenly from one to another: how small it gets, and after which share of the way it is first below a size. */
function courseOf([from, to]: readonly [Gap, Gap]) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const a = dx * dx + dy * dy
  const b = from[0] * dx + from[1] * dy
  const c = from[0] * from[0] + from[1] * from[1]
  const nearest = a > 0 ? Math.min(1, Math.max(0, -b / a)) : 0
  return {
    least: Math.hypot(from[0] + nearest * dx, from[1] + nearest * dy),
    enters: (size: number): number => {
      if (c < size * size || a === 0) return 0
      return Math.max(0, (-b - Math.sqrt(Math.max(0, b * b - a * (c - size * size)))) / a)
    },
  }
}
