import type { Field, Obstacle, Point } from '../../../../src/model/documents/types.ts'
import { imageOf, type Partner, partnerOf, rounded, roundedPoint } from './partner.ts'

type Obstacles = Obstacle[]

const withOutline = (obstacles: Obstacles, index: number, outline: Point[]): Obstacles =>
  obstacles.map((obstacle, other) => (other === index ? { ...obstacle, outline } : obstacle))

/** The partner's outline drawn after its obstacle's. */
function followed(field: Field, obstacles: Obstacles, index: number, { index: other, corners }: Partner): Obstacles {
  const outline = [...obstacles[other]!.outline]
  for (const [corner, image] of corners.entries()) outline[image] = imageOf(field, obstacles[index]!.outline[corner]!)
  return withOutline(obstacles, other, outline)
}

/** Where a corner that is its own image may lie: on the middle line, or on the field's centre. */
function onTheMiddle(field: Field, [, y]: Point): Point {
  return [rounded(field.length / 2), field.symmetry === 'mirror' ? y : rounded(field.width / 2)]
}

/** One corner at another point; with `alike`, its image on the other half follows. */
export function withCornerAt(field: Field, at: { obstacle: number; corner: number; alike: boolean }, to: Point) {
  const { obstacle: index, corner, alike } = at
  const partner = alike ? partnerOf(field, index) : null
  const point = roundedPoint(to)
  const outline = [...field.obstacles[index]!.outline]
  if (partner?.index !== index) {
    outline[corner] = point
    const moved = withOutline(field.obstacles, index, outline)
    return partner ? followed(field, moved, index, partner) : moved
  }
  const image = partner.corners[corner]!
  outline[corner] = image === corner ? onTheMiddle(field, point) : point
  outline[image] = imageOf(field, outline[corner]!)
  return withOutline(field.obstacles, index, outline)
}

/** The obstacle moved as a whole; with `alike`, its partner follows, and its own partner moves only where it stays one. */
export function withObstacleMoved(field: Field, at: { obstacle: number; alike: boolean }, [dx, dy]: Point): Obstacles {
  const { obstacle: index, alike } = at
  const partner = alike ? partnerOf(field, index) : null
  const own = partner?.index === index
  const by: Point = own ? [0, field.symmetry === 'mirror' ? dy : 0] : [dx, dy]
  const outline = field.obstacles[index]!.outline.map(([x, y]): Point => roundedPoint([x + by[0], y + by[1]]))
  const moved = withOutline(field.obstacles, index, outline)
  return partner && !own ? followed(field, moved, index, partner) : moved
}

const middle = ([ax, ay]: Point, [bx, by]: Point): Point => roundedPoint([(ax + bx) / 2, (ay + by) / 2])

/** The outline with further corners, each on the edge that is named by the corner that it begins at. */
const withCorners = (outline: readonly Point[], added: ReadonlyMap<number, Point>): Point[] =>
  outline.flatMap((corner, edge) => (added.has(edge) ? [corner, added.get(edge)!] : [corner]))

/** The edge of the partner that is an edge's image. */
function imageOfEdge({ corners }: Partner, edge: number): number {
  const count = corners.length
  const [a, b] = [corners[edge]!, corners[(edge + 1) % count]!]
  return (a + 1) % count === b ? a : b
}

/** A new corner in the middle of an edge; with `alike`, on the other half too. */
export function withCornerAdded(field: Field, at: { obstacle: number; edge: number; alike: boolean }): Obstacles {
  const { obstacle: index, edge, alike } = at
  const partner = alike ? partnerOf(field, index) : null
  const image = partner ? imageOfEdge(partner, edge) : null
  const { outline } = field.obstacles[index]!
  const corner = middle(outline[edge]!, outline[(edge + 1) % outline.length]!)
  return field.obstacles.map((obstacle, other) => {
    const added = new Map<number, Point>()
    // The image's own middle would be rounded the other way where it lies on half a millimetre.
    if (image !== null && other === partner!.index) added.set(image, imageOf(field, corner))
    if (other === index) added.set(edge, corner)
    return added.size === 0 ? obstacle : { ...obstacle, outline: withCorners(obstacle.outline, added) }
  })
}

/** Without a corner, and with `alike` without its image; null where fewer than three corners would be left. */
export function withoutCorner(
  field: Field,
  at: { obstacle: number; corner: number; alike: boolean },
): Obstacles | null {
  const { obstacle: index, corner, alike } = at
  const partner = alike ? partnerOf(field, index) : null
  const gone = field.obstacles.map((obstacle, other) => {
    const corners = new Set<number>()
    if (other === index) corners.add(corner)
    if (other === partner?.index) corners.add(partner.corners[corner]!)
    return corners.size === 0
      ? obstacle
      : { ...obstacle, outline: obstacle.outline.filter((_, at) => !corners.has(at)) }
  })
  return gone.some(({ outline }) => outline.length < 3) ? null : gone
}

/** Without an obstacle, and with `alike` without its partner. */
export function withoutObstacle(field: Field, at: { obstacle: number; alike: boolean }): Obstacles {
  const partner = at.alike ? partnerOf(field, at.obstacle) : null
  return field.obstacles.filter((_, index) => index !== at.obstacle && index !== partner?.index)
}

/** A new obstacle and, where it is not its own image, its partner on the other half. */
export function withObstacleAdded(
  field: Field,
  obstacle: Obstacle,
  other: { id: string; name: string } | null,
): Obstacles {
  const obstacles = [...field.obstacles, obstacle]
  const alone = { ...field, obstacles }
  if (!other || partnerOf(alone, obstacles.length - 1)) return obstacles
  return [...obstacles, { ...other, outline: obstacle.outline.map((corner) => imageOf(field, corner)) }]
}
