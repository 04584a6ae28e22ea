import type { Field, Point } from '../../../src/model/documents/types.ts'

/**
 * Shortest way by brute force, sharing no code with the program: way points all round every corner, every pair joined
 * if the straight line keeps `keep` from all edges and the border.
 */
export function shortestOverWayPoints(
  field: Field,
  { from, to, around, keep }: { from: Point; to: Point; around: number; keep: number },
): number | null {
  const edges = field.obstacles.flatMap(({ outline }) =>
    outline.map((corner, i) => [corner, outline[(i + 1) % outline.length]!] as const),
  )
  const count = 16
  const points = [from, to]
  for (const [[x, y]] of edges) {
    for (let i = 0; i < count; i++) {
      const angle = (2 * Math.PI * (i + 0.5)) / count
      const point: Point = [x + around * Math.cos(angle), y + around * Math.sin(angle)]
      if (isClear(field, point, keep)) points.push(point)
    }
  }
  const clear = (a: Point, b: Point) => edges.every(([p, q]) => distanceOfSegments(a, b, p, q) >= keep - 1e-9)
  const lengths = points.map((_, i) => (i === 0 ? 0 : Number.POSITIVE_INFINITY))
  const open = new Set(points.keys())
  while (open.size > 0) {
    let nearest = -1
    for (const i of open) if (nearest < 0 || lengths[i]! < lengths[nearest]!) nearest = i
    if (nearest === 1 || lengths[nearest] === Number.POSITIVE_INFINITY) break
    open.delete(nearest)
    for (const i of open) {
      const length =
        lengths[nearest]! + Math.hypot(points[i]![0] - points[nearest]![0], points[i]![1] - points[nearest]![1])
      if (length < lengths[i]! && clear(points[nearest]!, points[i]!)) lengths[i] = length
    }
  }
  return Number.isFinite(lengths[1]!) ? lengths[1]! : null
}

/** Whether a point keeps a distance from obstacles and border; inside an obstacle it does not. */
export function isClear(field: Field, point: Point, keep: number): boolean {
  const [x, y] = point
  const least = keep - 1e-9
  if (x < least || y < least || x > field.length - least || y > field.width - least) return false
  return field.obstacles.every(({ outline }) => {
    let winding = 0
    return (
      outline.every((p, i) => {
        const q = outline[(i + 1) % outline.length]!
        const ahead = Math.atan2(q[1] - y, q[0] - x) - Math.atan2(p[1] - y, p[0] - x)
        winding += Math.atan2(Math.sin(ahead), Math.cos(ahead))
        return distanceToSegment(point, p, q) >= least
      }) && Math.abs(winding) < 1
    )
  })
}

function distanceToSegment([x, y]: Point, p: Point, q: Point): number {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1])
  const [ux, uy] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length]
  const along = (x - p[0]) * ux + (y - p[1]) * uy
  if (along < 0) return Math.hypot(x - p[0], y - p[1])
  if (along > length) return Math.hypot(x - q[0], y - q[1])
  return Math.abs((x - p[0]) * uy - (y - p[1]) * ux)
}

function distanceOfSegments(a: Point, b: Point, p: Point, q: Point): number {
  const side = (s: Point, t: Point, u: Point) => (t[0] - s[0]) * (u[1] - s[1]) - (t[1] - s[1]) * (u[0] - s[0])
  if (side(a, b, p) * side(a, b, q) < 0 && side(p, q, a) * side(p, q, b) < 0) return 0
  const ends = [distanceToSegment(p, a, b), distanceToSegment(q, a, b)]
  return Math.min(...ends, distanceToSegment(a, p, q), distanceToSegment(b, p, q))
}
