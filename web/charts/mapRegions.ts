import { pixel, type Scale } from './scale.ts'

/** Points of every option in rows from the lowest y, each from the lowest x; square. */
export type MapRows = readonly (readonly (readonly number[])[])[]

/** A corner of a triangle: where it is drawn, and what every option is worth there. */
interface Corner {
  x: number
  y: number
  points: readonly number[]
}

export interface MapRegions {
  /** One path for each option: where it is the best. */
  areas: string[]
  /** The borders between best options, as one path. */
  border: string
  /** Where each option's name may stand: the middle of its places; null where it is the best nowhere. */
  labels: ({ x: number; y: number } | null)[]
  /** Share of the map on which each option is the best. */
  shares: number[]
}

/**
 * Where which option is the best: the points are straight over each half of each square, so that every region is made of
 * whole pieces without gaps, and the border is where the two best are equal.
 */
export function mapRegions(rows: MapRows, x: Scale, y: Scale): MapRegions {
  const options = rows[0]?.[0]?.length ?? 0
  const areas: string[] = Array.from({ length: options }, () => '')
  const sums = Array.from({ length: options }, () => ({ area: 0, x: 0, y: 0 }))
  let border = ''
  for (const triangle of trianglesOf(rows, x, y))
    for (let option = 0; option < options; option++) {
      const piece = bestPart(triangle, option, options)
      if (piece.length < 3) continue
      const middle = middleOf(piece)
      if (middle.area < 1e-9) continue
      areas[option] += pathOf(piece)
      const sum = sums[option]!
      sum.area += middle.area
      sum.x += middle.area * middle.x
      sum.y += middle.area * middle.y
      for (let other = option + 1; other < options; other++) border += edgeOf(piece, option, other)
    }
  const whole = sums.reduce((total, { area }) => total + area, 0)
  return {
    areas,
    border,
    labels: sums.map((sum) => (sum.area > 0 ? { x: pixel(sum.x / sum.area), y: pixel(sum.y / sum.area) } : null)),
    shares: sums.map(({ area }) => (whole > 0 ? area / whole : 0)),
  }
}

function trianglesOf(rows: MapRows, x: Scale, y: Scale): Corner[][] {
  const corner = (i: number, j: number): Corner => ({ x: x(i), y: y(j), points: rows[j]![i]! })
  const out: Corner[][] = []
  for (let j = 0; j + 1 < rows.length; j++)
    for (let i = 0; i + 1 < rows.length; i++) {
      const [a, b, c, d] = [corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)]
      out.push([a, b, c], [a, c, d])
    }
  return out
}

/** The part of a triangle where no other option is better: cut once along each line of equality. */
function bestPart(triangle: Corner[], option: number, options: number): Corner[] {
  let piece = triangle
  for (let other = 0; other < options && piece.length > 0; other++)
    if (other !== option) piece = cut(piece, (corner) => corner.points[option]! - corner.points[other]!)
  return piece
}

/** Sutherland–Hodgman with one straight edge: what lies where `lead` is not below 0. */
function cut(piece: Corner[], lead: (corner: Corner) => number): Corner[] {
  const out: Corner[] = []
  piece.forEach((corner, index) => {
    const next = piece[(index + 1) % piece.length]!
    const [here, there] = [lead(corner), lead(next)]
    if (here >= 0) out.push(corner)
    if (here * there < 0) out.push(between(corner, next, here / (here - there)))
  })
  return out
}

const between = (a: Corner, b: Corner, share: number): Corner => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
  points: a.points.map((value, option) => value + (b.points[option]! - value) * share),
})

/** The side of a piece along which two options are equal. */
function edgeOf(piece: Corner[], option: number, other: number): string {
  const equal = ({ points }: Corner) => Math.abs(points[option]! - points[other]!) < 1e-9
  for (const [index, corner] of piece.entries()) {
    const next = piece[(index + 1) % piece.length]!
    if (equal(corner) && equal(next)) return `M${pixel(corner.x)} ${pixel(corner.y)}L${pixel(next.x)} ${pixel(next.y)}`
  }
  return ''
}

const pathOf = (piece: Corner[]): string => `M${piece.map(({ x, y }) => `${pixel(x)} ${pixel(y)}`).join('L')}Z`

/** Area and centroid of a polygon that is convex. */
function middleOf(piece: Corner[]): { area: number; x: number; y: number } {
  let [twice, x, y] = [0, 0, 0]
  for (const [index, a] of piece.entries()) {
    const b = piece[(index + 1) % piece.length]!
    const cross = a.x * b.y - b.x * a.y
    twice += cross
    x += (a.x + b.x) * cross
    y += (a.y + b.y) * cross
  }
  return { area: Math.abs(twice) / 2, x: x / (3 * twice), y: y / (3 * twice) }
}

/** Points of every option anywhere on the map, at shares of its sides from 0 to 1, straight between its values. */
export function readMap(rows: MapRows, across: number, up: number): number[] {
  const last = rows.length - 1
  const [i, j] = [Math.min(last - 1, Math.floor(across * last)), Math.min(last - 1, Math.floor(up * last))]
  const [u, v] = [across * last - i, up * last - j]
  const [a, b, c, d] = [rows[j]![i]!, rows[j]![i + 1]!, rows[j + 1]![i + 1]!, rows[j + 1]![i]!]
  // The same two halves of the square as the picture's.
  return a.map((value, option) =>
    u >= v
      ? value + u * (b[option]! - value) + v * (c[option]! - b[option]!)
      : value + v * (d[option]! - value) + u * (c[option]! - d[option]!),
  )
}
