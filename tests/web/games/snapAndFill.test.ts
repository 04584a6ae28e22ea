import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import type { Point } from '../../../src/model/documents/types.ts'
import { standing } from '../../../src/model/field/index.ts'
import { gridIn, isInside, rectangle, spotsAt } from '../../../web/screens/games/field/fill.ts'
import { snapped, targetsOf } from '../../../web/screens/games/field/snap.ts'
import { cornersOf, spotsOf } from '../../../web/screens/games/field/things.ts'
import { filled, firstZone, withZoneCorner, zonePoints } from '../../../web/screens/games/field/zone.ts'

const footprint = { length: 0.85, width: 0.85 }
/** Half of 0.85 m and the field's 0.05 m. */
const away = 0.475
const foot = spotsOf(game).find(({ id }) => id === 'gantry.foot')!
const targets = targetsOf(game, foot, away)

describe('a dragged spot', () => {
  test('lies on the grid where nothing is near', () => {
    expect(snapped([4.53, 3.31], { grid: 0.1, targets: null, within: 0.1 }).at).toEqual([4.5, 3.3])
    expect(snapped([4.5312, 3.3111], { grid: 0, targets: null, within: 0.1 }).at).toEqual([4.5312, 3.3111])
    expect(snapped([1.01, 0.51], { grid: 0.3048, targets: null, within: 0 }).at).toEqual([0.9144, 0.6096])
  })

  test('is drawn level with another spot, and says with which line', () => {
    // The other gantry spot stands at 5.4 along, 4.4 across.
    const found = snapped([4.31, 4.37], { grid: 0.25, targets, within: 0.05 })
    expect(found).toEqual({ at: [4.25, 4.4], guides: { y: 4.4 } })
  })

  test('is drawn to where the robot just touches: the gantry’s leg ends at 3.3 m, its centre stays at 3.775 m', () => {
    const found = snapped([3.8, 3.9], { grid: 0.1, targets, within: 0.06 })
    expect(found.at[0]).toBe(3.775)
    expect(standing(game.field, footprint)(found.at)).toBe(true)
  })

  test('is drawn along a slanted edge, and the robot can stand there', () => {
    // The dolphin's lower right edge runs from (5.6, 5.9) to (6, 6.3); straight out of its middle by the kept distance.
    const out = away / Math.SQRT2
    const near: Point = [5.8 + out + 0.02, 6.1 - out - 0.01]
    const found = snapped(near, { grid: 0.1, targets: { ...targets, x: [], y: [] }, within: 0.05 })
    expect(Math.hypot(found.at[0] - 5.8 - out, found.at[1] - 6.1 + out)).toBeLessThan(0.02)
    expect(standing(game.field, footprint)(found.at)).toBe(true)
  })

  test('is not drawn to itself or to what moves along', () => {
    expect(targets.x).not.toContain(3.95)
    const [corner] = cornersOf(
      game,
      game.field.obstacles.findIndex(({ id }) => id === 'jetty-home'),
    )
    const around = targetsOf(game, corner!, away)
    expect(around.away).toBe(0)
    // The partner's corner at 11.6 m follows the one in hand, its neighbours at 5.4 m stay.
    expect(around.x).toContain(5.4)
    expect(around.x).not.toContain(11.6)
  })
})

describe('a zone', () => {
  const box = rectangle([1, 1], [3, 2])

  test('of 2 m by 1 m with spots each half metre has 5 by 3 of them, its edges among them', () => {
    const points = gridIn(box, { along: 0.5, across: 0.5 })
    expect(points).toHaveLength(15)
    expect(points[0]).toEqual([1, 1])
    expect(points.at(-1)).toEqual([3, 2])
  })

  test('that the spacing does not divide has the same margin on both sides', () => {
    expect(gridIn(box, { along: 0.9, across: 5 })).toEqual([
      [1.1, 1.5],
      [2, 1.5],
      [2.9, 1.5],
    ])
  })

  test('with any corners keeps the points inside: half of a square and its diagonal', () => {
    const half: Point[] = [
      [0, 0],
      [4, 0],
      [0, 4],
    ]
    // 5 + 4 + 3 + 2 + 1 points of a grid of 1 m.
    expect(gridIn(half, { along: 1, across: 1 })).toHaveLength(15)
    expect(isInside([2.5, 2.5], half)).toBe(false)
  })

  test('has as many spots as fit, and none outside', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 0, max: 80 })),
        fc.tuple(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 1, max: 80 })),
        fc.integer({ min: 3, max: 30 }),
        ([x, y], [wide, high], tenths) => {
          const spacing = tenths / 10
          const zone = rectangle([x / 10, y / 10], [(x + wide) / 10, (y + high) / 10])
          const points = gridIn(zone, { along: spacing, across: spacing })
          expect(points.length).toBe((Math.floor(wide / tenths) + 1) * (Math.floor(high / tenths) + 1))
          expect(points.every((point) => isInside(point, zone))).toBe(true)
        },
      ),
    )
  })

  test('leaves out where the robot can not stand', () => {
    const zone = { ...firstZone(game), outline: rectangle([2, 3], [4.5, 5]), along: 0.5, across: 0.5 }
    const all = zonePoints(game, { ...zone, skip: false }, footprint)
    const free = zonePoints(game, { ...zone, skip: true }, footprint)
    // The gantry's leg (2.9 to 3.3 m along, 3.5 to 4.7 m across) and 0.475 m around it take the columns at 2.5, 3 and 3.5 m.
    expect(all).toHaveLength(30)
    expect(free.length).toBeLessThan(all.length)
    expect(free.some(([x, y]) => x === 3 && y === 4)).toBe(false)
  })

  test('fills its place: ids that are there are kept first, new ones are free', () => {
    const zone = { ...firstZone(game), place: 'goals/0', instead: true }
    const next = filled(game, zone, [
      [1, 1],
      [1, 2],
      [1, 3],
    ])
    expect(next.goals[0]!.spots.map(({ id }) => id)).toEqual(['piers.south', 'piers.north', 'piers.1'])
    const more = filled(next, { ...zone, instead: false }, [[1, 4]])
    expect(more.goals[0]!.spots.map(({ id }) => id)).toEqual(['piers.south', 'piers.north', 'piers.1', 'piers.2'])
    expect(spotsAt([[0, 0]], { reuse: [], taken: new Set(['a.1']), place: 'a' })[0]!.id).toBe('a.2')
  })

  test('that is a rectangle stays one while a corner is moved, and takes the opposite one along beyond it', () => {
    const zone = { ...firstZone(game), outline: rectangle([1, 1], [3, 2]) }
    expect(withZoneCorner(zone, 2, [4, 5]).outline).toEqual(rectangle([1, 1], [4, 5]))
    expect(withZoneCorner(zone, 2, [0, 0]).outline).toEqual(rectangle([0, 0], [0, 0]))
    expect(withZoneCorner(zone, 0, [2, 5]).outline).toEqual(rectangle([2, 5], [3, 5]))
  })
})
