import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/model/documents/types.ts'
import { fieldRoutes, type Segment } from '../../../src/model/field/index.ts'
import { polyline } from '../../../src/model/field/polyline.ts'
import { anyField, anyPoint, anyRadius, box, disc, fieldWith } from './fields.ts'
import { isClear, shortestOverWayPoints } from './oracle.ts'

const large = { length: 40, width: 40 }
const point = { length: 0, width: 0 }
/** Published cases lie around the origin; the field begins there. */
const moved = (points: Point[]): Point[] => points.map(([x, y]) => [x + 10, y + 20])
const at = (x: number, y: number): Point => [x + 10, y + 20]

describe('a point robot among boxes', () => {
  // checks.md 6.1: Lozano-Pérez & Wesley, CACM 22 (1979), 560–570; de Berg et al., Computational Geometry (2008), ch. 15.
  test.each([
    {
      boxes: [[4, -1, 6, 2]],
      to: [10, 0],
      length: 2 + 2 * Math.sqrt(17),
      via: [
        [0, 0],
        [4, -1],
        [6, -1],
        [10, 0],
      ],
    },
    { boxes: [[4, -2, 6, 2]], to: [10, 0], length: 2 + 2 * Math.sqrt(20), via: null },
    {
      boxes: [
        [2, 1, 4, 8],
        [7, -3, 9, 4],
      ],
      to: [12, 6],
      length: 13.7509111199,
      via: [
        [0, 0],
        [4, 1],
        [7, 4],
        [12, 6],
      ],
    },
    {
      boxes: [[5, 5, 6, 6]],
      to: [3, 4],
      length: 5,
      via: [
        [0, 0],
        [3, 4],
      ],
    },
  ] as const)('round $boxes goes $length m', ({ boxes, to, length, via }) => {
    const field = fieldWith(
      boxes.map(([a, b, c, d]) => moved(box(a, b, c, d))),
      large,
    )
    const route = fieldRoutes(field, point).route(at(0, 0), at(to[0], to[1]))!
    expect(Math.abs(route.length - length)).toBeLessThan(1e-9)
    if (!via) return
    const corners = [at(0, 0), ...route.segments.flatMap((segment) => (segment.kind === 'line' ? [segment.to] : []))]
    expect(corners).toEqual(via.map(([x, y]) => at(x, y)))
  })
})

describe('a disc', () => {
  test('round the tip of a wall drives two tangents and an arc', () => {
    // checks.md 6.2: √(d₁² − r²) + √(d₂² − r²) + r·φ, φ = 1.252548454; a point robot would drive 11.6619037897.
    const wall = moved([
      [5, 3],
      [5.2, -30],
      [4.8, -30],
    ])
    const { length, segments } = fieldRoutes(fieldWith([wall], large), disc(0.5)).route(at(0, 0), at(10, 0))!
    expect(Math.abs(length - 12.2452242656)).toBeLessThan(1e-9)
    expect(segments.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line'])
    expect(segments[1]).toMatchObject({ radius: 0.5, turn: expect.closeTo(1.252548454, 9), direction: -1 })
    expect(fieldRoutes(fieldWith([wall], large), point).route(at(0, 0), at(10, 0))!.length).toBeCloseTo(
      11.6619037897,
      9,
    )
  })

  test('passes a corner that lies straight between start and end like a string round a circle', () => {
    // checks.md 6.3: distances 5 and 7 from the centre, radius 2: 12.6933167225.
    const wall = moved([
      [5, 0],
      [5.01, -30],
      [4.99, -30],
    ])
    const route = fieldRoutes(fieldWith([wall], large), disc(2)).route(at(0, 0), at(12, 0))!
    expect(Math.abs(route.length - 12.6933167225)).toBeLessThan(1e-9)
  })

  test('round a square drives two tangents, two arcs and an offset edge', () => {
    // checks.md 6.4: 8.72552876744; a square grown with square corners would give 8.83095189485.
    const field = fieldWith([moved(box(-1, -1, 1, 1))], large)
    const { length, segments } = fieldRoutes(field, disc(0.5)).route(at(-4, 0), at(4, 0))!
    expect(Math.abs(length - 8.72552876744)).toBeLessThan(1e-9)
    expect(segments.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'arc', 'line'])
    expect(fieldRoutes(field, point).route(at(-4, 0), at(4, 0))!.length).toBeCloseTo(8.32455532034, 9)
  })

  test('grows obstacles by half the smaller side of its footprint plus the clearance', () => {
    const field = fieldWith([box(5, 3, 6, 5)], { clearance: 0.05 })
    expect(fieldRoutes(field, { length: 0.9, width: 0.7 }).radius).toBeCloseTo(0.4, 12)
    expect(fieldRoutes(field, { length: 0.7, width: 0.9 }).radius).toBeCloseTo(0.4, 12)
  })

  test('turns once on an arc that the way both reaches and leaves on the circle', () => {
    // Both points stand on the grown corner itself, a quarter turn apart.
    const field = fieldWith([box(4, 0, 8, 4)])
    const { length, segments } = fieldRoutes(field, disc(0.5)).route([3.5, 4], [4, 4.5])!
    expect(segments).toHaveLength(1)
    expect(segments[0]).toMatchObject({ kind: 'arc', turn: expect.closeTo(Math.PI / 2, 9), direction: -1 })
    expect(length).toBeCloseTo((0.5 * Math.PI) / 2, 9)
  })

  test('has no arc at a concave corner: along the inside of an L it drives straight to the far tip', () => {
    const outline: Point[] = [
      [4, 2],
      [8, 2],
      [8, 2.5],
      [4.5, 2.5],
      [4.5, 6],
      [4, 6],
    ]
    const { segments } = fieldRoutes(fieldWith([outline]), disc(0.4)).route([8, 1], [3, 6])!
    const centres = segments.flatMap((segment) => (segment.kind === 'arc' ? [segment.centre] : []))
    expect(centres).toEqual([[4, 2]])
    const inside = fieldRoutes(fieldWith([outline]), disc(0.4)).route([5, 6], [8, 3])!
    expect(inside.segments.map(({ kind }) => kind)).toEqual(['line'])
  })

  test('stays where it is at no length', () => {
    expect(fieldRoutes(fieldWith([]), disc(0.4)).route([3, 3], [3, 3])).toEqual({ length: 0, segments: [] })
  })
})

describe('where there is no way', () => {
  test('a gap of exactly the robot is wide enough, one a hair narrower is not', () => {
    const walls = (gap: number) => fieldWith([box(7, 0, 8, 4), box(7, 4 + gap, 8, 8)])
    const between = (gap: number) => fieldRoutes(walls(gap), disc(0.4)).route([3, 2], [12, 2])
    expect(between(0.8)?.length).toBeGreaterThan(9)
    expect(between(0.8 - 1e-6)).toBeNull()
    expect(between(0.8 + 1e-6)!.length).toBeCloseTo(between(0.8)!.length, 4)
  })

  test('an obstacle at the border can not be passed on that side', () => {
    // The short way round would be between the obstacle and the border; the other side is much longer.
    const field = fieldWith([box(7, 2, 8, 8)])
    const { length, segments } = fieldRoutes(field, disc(0.4)).route([6, 7.5], [9, 7.5])!
    expect(length).toBeGreaterThan(2 * 5.5)
    expect(segments.flatMap((segment) => (segment.kind === 'arc' ? [segment.centre] : []))).toEqual([
      [7, 2],
      [8, 2],
    ])
    expect(fieldRoutes(fieldWith([box(7, 0, 8, 8)]), disc(0.4)).route([6, 7.5], [9, 7.5])).toBeNull()
  })

  test('obstacles that overlap or touch are one, with no way between', () => {
    for (const middle of [3.7, 4, 4.2]) {
      const field = fieldWith([box(7, 0, 8, 4), box(7, middle, 8, 7)])
      const { segments } = fieldRoutes(field, disc(0.3)).route([5, 4], [10, 4])!
      expect(segments.flatMap((segment) => (segment.kind === 'arc' ? [segment.centre] : []))).toEqual([
        [7, 7],
        [8, 7],
      ])
    }
  })

  test('a pocket without a way out is left to the search, which ends', () => {
    // Tangents reach the closed yard's inner corners from its inside only; a search that follows them outside never ends.
    const yard = [
      box(5, 2, 11, 2.5),
      box(5, 5.5, 11, 6),
      box(5, 2, 5.5, 6),
      box(10.5, 2, 11, 6),
      box(7.5, 3.8, 8.5, 4.2),
    ]
    const routes = fieldRoutes(fieldWith(yard), disc(0.3))
    expect(routes.route([6.5, 4], [9.5, 4])!.length).toBeGreaterThan(3)
    expect(routes.route([6.5, 4], [3, 4])).toBeNull()
    expect(routes.route([3, 4], [13, 4])!.length).toBeGreaterThan(10)
  })

  test('the sentence names the obstacle or the border that blocks a point, and touching is allowed', () => {
    const routes = fieldRoutes(fieldWith([box(7, 2, 8, 6)]), disc(0.4))
    expect(routes.blockedBy([7.5, 4])).toEqual({ obstacle: 'Rock 0' })
    expect(routes.blockedBy([6.7, 4])).toEqual({ obstacle: 'Rock 0' })
    expect(routes.blockedBy([6.6, 4])).toBeNull()
    expect(routes.blockedBy([6.6 + 1e-6, 4])).toEqual({ obstacle: 'Rock 0' })
    expect(routes.blockedBy([0.39, 4])).toEqual({ border: true })
    expect(routes.blockedBy([15.6, 7.6])).toBeNull()
    expect(routes.route([7.5, 4], [3, 3])).toBeNull()
  })

  test('a robot wider than the field fits nowhere', () => {
    expect(fieldRoutes(fieldWith([]), disc(4.1)).blockedBy([8, 4])).toEqual({ border: true })
  })

  test('too many corners are refused with a sentence instead of a long wait', () => {
    const boxes = Array.from({ length: 76 }, (_, i) => box(i, 1, i + 0.5, 2))
    expect(() => fieldRoutes(fieldWith(boxes, { length: 100 }), disc(0.1))).toThrow(
      expect.objectContaining({ code: 'overBudget', message: expect.stringContaining('304 corners') }),
    )
  })
})

describe('on any field', () => {
  const anyCase = fc.record({ field: anyField, radius: anyRadius, from: anyPoint, to: anyPoint, over: anyPoint })

  /** Runs a check on many fields and says on how many it had a route to look at. */
  function onRoutes(seed: number, runs: number, check: (value: Case) => void): number {
    let seen = 0
    fc.assert(
      fc.property(anyCase, ({ field, radius, from, to, over }) => {
        const routes = fieldRoutes(field, disc(radius))
        const route = routes.route(from, to)
        if (!route) return
        seen++
        check({ field, radius, from, to, over, routes, ...route })
      }),
      { numRuns: runs, seed },
    )
    return seen
  }

  interface Case {
    field: ReturnType<typeof fieldWith>
    radius: number
    from: Point
    to: Point
    over: Point
    routes: ReturnType<typeof fieldRoutes>
    length: number
    segments: Segment[]
  }

  test('the length lies between those of a graph inside and a graph outside the true arcs', () => {
    let [tight, blocked] = [0, 0]
    const narrow = Math.cos(Math.PI / 16)
    fc.assert(
      fc.property(anyCase, ({ field, radius, from, to }) => {
        const route = fieldRoutes(field, disc(radius)).route(from, to)
        const free = isClear(field, from, radius) && isClear(field, to, radius)
        const longer = free ? shortestOverWayPoints(field, { from, to, around: radius / narrow, keep: radius }) : null
        const shorter = free ? shortestOverWayPoints(field, { from, to, around: radius, keep: radius * narrow }) : null
        if (route) expect(route.length).toBeGreaterThanOrEqual(shorter! - 1e-8)
        if (longer !== null) expect(route!.length).toBeLessThanOrEqual(longer + 1e-8)
        if (route && longer && longer - shorter! < 0.01 * longer) tight++
        if (!route) blocked++
      }),
      { numRuns: 80, seed: 7 },
    )
    // The bounds would be empty if they hardly ever closed in, or if hardly any case had a way or was blocked.
    expect(tight).toBeGreaterThan(20)
    expect(blocked).toBeGreaterThan(10)
  })

  test('the way keeps its distance everywhere, is whole, and bends nowhere but on arcs', () => {
    const bent = { count: 0 }
    const seen = onRoutes(3, 600, ({ field, radius, from, to, segments, length }) => {
      const path = polyline(from, segments)
      for (const spot of path) expect(isClear(field, spot, radius - 1e-9)).toBe(true)
      for (const segment of segments) {
        if (segment.kind === 'arc') continue
        for (let i = 1; i < 20; i++) {
          const [a, b] = [segment.from, segment.to]
          const between: Point = [a[0] + ((b[0] - a[0]) * i) / 20, a[1] + ((b[1] - a[1]) * i) / 20]
          expect(isClear(field, between, radius - 1e-9)).toBe(true)
        }
      }
      const ends = segments.map(endsOf)
      const joints = [from, ...ends.map(({ last }) => last)]
      for (const [i, { first }] of ends.entries()) expect(apart(first, joints[i]!)).toBeLessThan(1e-7)
      expect(apart(joints.at(-1)!, to)).toBeLessThan(1e-7)
      for (let i = 1; i < ends.length; i++) {
        expect(Math.cos(ends[i]!.entering - ends[i - 1]!.leaving)).toBeGreaterThan(1 - 1e-9)
      }
      // Two arcs in a row on one corner would be two turns where the robot makes one.
      for (let i = 1; i < segments.length; i++) {
        const [a, b] = [segments[i - 1]!, segments[i]!]
        if (a.kind === 'arc' && b.kind === 'arc') expect(apart(a.centre, b.centre)).toBeGreaterThan(1e-9)
      }
      const drawn = path.slice(1).reduce((sum, spot, i) => sum + apart(spot, path[i]!), 0)
      expect(drawn).toBeLessThanOrEqual(length + 1e-9)
      expect(drawn).toBeGreaterThan(length - 1e-3)
      if (segments.length > 1) bent.count++
    })
    expect(seen).toBeGreaterThan(200)
    expect(bent.count).toBeGreaterThan(80)
  })

  test('there and back are equally long', () => {
    onRoutes(4, 400, ({ routes, from, to, length }) => {
      expect(routes.route(to, from)!.length).toBeCloseTo(length, 9)
    })
  })

  test('a way over a third point is never shorter', () => {
    const compared = { count: 0 }
    onRoutes(5, 600, ({ routes, from, to, over, length }) => {
      const [first, second] = [routes.route(from, over), routes.route(over, to)]
      if (!first || !second) return
      compared.count++
      expect(length).toBeLessThanOrEqual(first.length + second.length + 1e-9)
    })
    expect(compared.count).toBeGreaterThan(100)
  })

  test('an obstacle off the route changes nothing', () => {
    const placed = { count: 0 }
    onRoutes(6, 600, ({ field, radius, from, to, over, length, segments }) => {
      const [x, y] = over
      const reach = radius + 0.2 * Math.SQRT2 + 0.01
      if (polyline(from, segments).some((spot) => apart(spot, over) < reach)) return
      if (segments.some((segment) => segment.kind === 'line' && distance(over, segment.from, segment.to) < reach))
        return
      const obstacle = { id: 'more', name: 'More', outline: box(x - 0.2, y - 0.2, x + 0.2, y + 0.2) }
      const more = fieldRoutes({ ...field, obstacles: [...field.obstacles, obstacle] }, disc(radius)).route(from, to)
      placed.count++
      expect(more!.length).toBeCloseTo(length, 9)
    })
    expect(placed.count).toBeGreaterThan(150)
  })

  test('a larger robot never has a shorter way', () => {
    onRoutes(8, 300, ({ field, radius, from, to, length }) => {
      expect(fieldRoutes(field, disc(radius * 0.9)).route(from, to)!.length).toBeLessThanOrEqual(length + 1e-9)
    })
  })
})

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

function distance([x, y]: Point, p: Point, q: Point): number {
  const share = ((x - p[0]) * (q[0] - p[0]) + (y - p[1]) * (q[1] - p[1])) / apart(p, q) ** 2
  const nearest = Math.min(1, Math.max(0, share))
  return apart([x, y], [p[0] + nearest * (q[0] - p[0]), p[1] + nearest * (q[1] - p[1])])
}

function endsOf(segment: Segment): { first: Point; last: Point; entering: number; leaving: number } {
  if (segment.kind === 'line') {
    const heading = Math.atan2(segment.to[1] - segment.from[1], segment.to[0] - segment.from[0])
    return { first: segment.from, last: segment.to, entering: heading, leaving: heading }
  }
  const { centre, radius, startAngle, turn, direction } = segment
  const on = (angle: number): Point => [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
  const end = startAngle + direction * turn
  const tangent = (direction * Math.PI) / 2
  return { first: on(startAngle), last: on(end), entering: startAngle + tangent, leaving: end + tangent }
}
