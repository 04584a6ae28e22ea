import type { Point, Spot } from '../../../../src/model/documents/types.ts'
import { rounded } from './partner.ts'

export interface Spacing {
  /** Along the field's length (m). */
  along: number
  across: number
}

/** Whether a point lies in an outline or within 0.1 mm of its edges. */
export function isInside([x, y]: Point, outline: readonly Point[]): boolean {
  let inside = false
  for (const [index, [ax, ay]] of outline.entries()) {
    const [bx, by] = outline[(index + 1) % outline.length]!
    const square = (bx - ax) ** 2 + (by - ay) ** 2
    const at = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
    if (Math.hypot(x - ax - at * (bx - ax), y - ay - at * (by - ay)) < 1e-4) return true
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}

/** Evenly spaced values with the same margin at both ends, at least one. */
function spread(low: number, high: number, step: number): number[] {
  const count = Math.floor((high - low) / step + 1e-9) + 1
  const first = low + (high - low - (count - 1) * step) / 2
  return Array.from({ length: count }, (_, index) => rounded(first + index * step))
}

/** The rectangle between two opposite corners. */
export const rectangle = ([ax, ay]: Point, [bx, by]: Point): Point[] => [
  [Math.min(ax, bx), Math.min(ay, by)],
  [Math.max(ax, bx), Math.min(ay, by)],
  [Math.max(ax, bx), Math.max(ay, by)],
  [Math.min(ax, bx), Math.max(ay, by)],
]

/** The points of a grid that lie in a zone, row by row from the own wall and the bottom; the grid is centred in it. */
export function gridIn(zone: readonly Point[], spacing: Spacing): Point[] {
  const [xs, ys] = [zone.map(([x]) => x), zone.map(([, y]) => y)]
  const columns = spread(Math.min(...xs), Math.max(...xs), spacing.along)
  const rows = spread(Math.min(...ys), Math.max(...ys), spacing.across)
  return rows.flatMap((y) => columns.map((x): Point => [x, y])).filter((point) => isInside(point, zone))
}

/** The first id of this kind that is free: 'piers.3'. */
export function freeId(taken: ReadonlySet<string>, stem: string): string {
  for (let number = 1; ; number++) if (!taken.has(`${stem}${number}`)) return `${stem}${number}`
}

/** Spots at the points. Existing ids are used first, in order, so that designs which name them keep meaning something. */
export function spotsAt(
  points: readonly Point[],
  how: { reuse: readonly Spot[]; taken: ReadonlySet<string>; place: string },
): Spot[] {
  const taken = new Set(how.taken)
  return points.map((at, index) => {
    const id = how.reuse[index]?.id ?? freeId(taken, `${how.place}.`)
    taken.add(id)
    return { id, at }
  })
}
