import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { settle } from '../../../src/model/timing/answer/settle.ts'
import { type Inputs, timing } from '../../../src/model/timing/index.ts'
import { evenly } from '../../../src/model/timing/numerics/trace.ts'
import { bedOf } from '../../../web/charts/timing/geometry/bed.ts'
import { fitted, roundBelow, steppedScale } from '../../../web/charts/timing/geometry/fit.ts'
import { linkageAt } from '../../../web/charts/timing/geometry/linkage.ts'
import { arc, armShape } from '../../../web/charts/timing/geometry/swing.ts'
import { bandOf, heightAt, pathOf, wheelBelow } from '../../../web/charts/timing/geometry/throws.ts'
import { tubeOf } from '../../../web/charts/timing/geometry/tube.ts'
import { wayLayout } from '../../../web/charts/timing/geometry/way.ts'
import { momentAt } from '../../../web/charts/timing/moment.ts'
import * as given from '../../model/timing/inputs.ts'

const likely = <T>(input: object) => settle<T>(input).likely
const pivot = likely<Extract<Inputs<number>['pivot'], { by: 'cylinder' }>>(given.cylinderPivotInput)
const drive = likely<Inputs<number>['drive']>(given.driveInput)
const rollers = likely<Inputs<number>['rollers']>(given.rollersInput)
const shot = likely<Inputs<number>['shot']>(given.shotInput)
const cylinder = likely<Inputs<number>['cylinder']>(given.cylinderInput)

const far = ([a, b]: readonly [number, number], [c, d]: readonly [number, number]) => Math.hypot(a - c, b - d)
const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('a picture’s scale', () => {
  test('the world lies inside of its margins, the same both ways, and touches one pair of them', () => {
    const box = fc.tuple(metres(-60, 60), metres(0.001, 120), metres(-20, 20), metres(0.001, 40))
    fc.assert(
      fc.property(box, fc.integer({ min: 280, max: 720 }), ([left, wide, bottom, high], width) => {
        const bounds = { left, right: left + wide, bottom, top: bottom + high }
        const view = fitted(bounds, { width, highest: 300, margin: { left: 50, right: 20, top: 10, bottom: 30 } })
        const across = view.x(bounds.right) - view.x(bounds.left)
        const up = view.y(bounds.bottom) - view.y(bounds.top)
        expect(across / wide / (up / high)).toBeCloseTo(1, 8)
        expect(view.x(bounds.left)).toBeGreaterThanOrEqual(50 - 1e-6)
        expect(view.x(bounds.right)).toBeLessThanOrEqual(width - 20 + 1e-6)
        expect(view.height).toBeCloseTo(up + 40, 6)
        expect(Math.min(width - 70 - across, 300 - up)).toBeCloseTo(0, 6)
      }),
    )
  })

  test('round numbers below: 1, 2 or 5 times a power of ten', () => {
    expect([0.9, 1, 1.99, 2, 4.99, 50, 73, 0.0031].map(roundBelow)).toEqual([0.5, 1, 1, 2, 2, 50, 50, 0.002])
  })

  test('a wheel takes 56 to 140 px whatever its size, and one twice as large on the same step twice as many', () => {
    fc.assert(
      fc.property(metres(0.005, 2), (diameter) => {
        const size = steppedScale(diameter) * diameter
        expect(size).toBeGreaterThanOrEqual(56 - 1e-6)
        expect(size).toBeLessThanOrEqual(140 + 1e-6)
      }),
    )
    expect(steppedScale(0.1)).toBe(steppedScale(0.14))
  })
})

describe('a cylinder on an arm', () => {
  test('the rod ends on the lever at every angle, and the tube lies between both hinges', () => {
    fc.assert(
      fc.property(
        metres(-9.5, 9.5),
        fc.tuple(metres(-5, 5), metres(-5, 5)),
        fc.tuple(metres(0.005, 3), metres(-9.5, 9.5)),
        (angle, frame, [radius, offset]) => {
          const { hinge, length, tubeEnd } = linkageAt({ ...pivot, frame, radius, offset }, angle)
          expect(far(hinge, [0, 0])).toBeCloseTo(radius, 9)
          // On the lever itself, not on the other side of the pivot.
          expect(1 - Math.cos(Math.atan2(hinge[1], hinge[0]) - angle - offset)).toBeCloseTo(0, 9)
          expect(far(frame, hinge)).toBeCloseTo(length, 9)
          expect(far(frame, tubeEnd) + far(tubeEnd, hinge)).toBeCloseTo(length, 9)
        },
      ),
    )
  })

  test('between its angles the drawn length changes by the stroke that the calculator says is used', () => {
    const answer = timing('pivot', given.cylinderPivotInput)
    const change = linkageAt(pivot, pivot.to).length - linkageAt(pivot, pivot.from).length
    expect(answer.quantities.strokeUsed).toBeGreaterThan(0.05)
    expect(Math.abs(change)).toBeCloseTo(answer.quantities.strokeUsed!, 9)
  })

  test('one that the calculator refuses as not fitting is drawn as too long or too short there', () => {
    for (const [closedLength, fits] of [
      [0.5, 'tooLong'],
      [0.05, 'tooShort'],
    ] as const) {
      const answer = timing('pivot', { ...given.cylinderPivotInput, closedLength })
      expect(answer.possible).toBe(false)
      if (answer.possible) return
      expect(answer.why.code).toBe('cylinderDoesNotFit')
      const link = linkageAt({ ...pivot, closedLength }, answer.why.values['angle']!)
      expect(link.fits).toBe(fits)
      expect(link.length).toBeCloseTo(answer.why.values['length']!, 9)
    }
    expect(linkageAt(pivot, pivot.from).fits).toBe('yes')
  })
})

describe('an arm', () => {
  test('its way begins and ends at its angles, and winds outwards beyond a whole turn', () => {
    const way = arc(1, 0.2, 0.2 + 3 * Math.PI)
    expect(far(way[0]!, [Math.cos(0.2), Math.sin(0.2)])).toBeCloseTo(0, 12)
    expect(Math.atan2(way.at(-1)![1], way.at(-1)![0])).toBeCloseTo(0.2 - Math.PI, 12)
    expect(far(way.at(-1)!, [0, 0])).toBeCloseTo(1.06, 12)
    expect(far(arc(1, 2, -1).at(-1)!, [0, 0])).toBe(1)
  })

  test('a rod of 2 m about its end: radius of gyration 2/√3, its centre of mass at 1 m; with less inertia there is none', () => {
    const rod = { ...pivot, mass: 3, centre: 1, inertia: (3 * 2 ** 2) / 3 }
    expect(armShape(rod).gyration).toBeCloseTo(2 / Math.sqrt(3), 12)
    expect(armShape(rod).impossibleInertia).toBe(false)
    expect(armShape({ ...rod, inertia: 2.9 }).impossibleInertia).toBe(true)
    // All mass in one point is the least that there is.
    expect(armShape({ ...rod, inertia: 3 }).impossibleInertia).toBe(false)
  })
})

describe('a flight', () => {
  test('it ends in the middle of the opening when it is aimed', () => {
    const throws = fc.tuple(metres(0.3, 12), metres(0.6, 1.4), metres(0, 1.5), metres(0.3, 3))
    let aimed = 0
    fc.assert(
      fc.property(throws, ([distance, angle, releaseHeight, targetHeight]) => {
        const input = { ...shot, distance, angle, releaseHeight, targetHeight }
        const answer = timing('shot', input)
        if (!answer.possible) return
        aimed++
        const [x, y] = pathOf(input, answer.quantities.exitSpeed)!.points.at(-1)!
        expect(x).toBeCloseTo(distance, 4)
        expect(y).toBeCloseTo(targetHeight, 3)
      }),
      { numRuns: 60 },
    )
    expect(aimed).toBeGreaterThan(20)
  })

  test('one that is too slow comes down to the floor where the closed form says: 4 m/s at 45°, 0.8 m up, no drag', () => {
    const input = { ...shot, dragCoefficient: 0, releaseHeight: 0.8, angle: Math.PI / 4, distance: 6 }
    const { points, lands } = pathOf(input, 4)!
    // x = v·cos α·(v·sin α + √(v²·sin² α + 2·g·h)) / g: any text on mechanics.
    const up = 4 * Math.sin(Math.PI / 4)
    const range = (up * (up + Math.sqrt(up ** 2 + 2 * 9.80665 * 0.8))) / 9.80665
    expect(lands).toBe(true)
    expect(points.at(-1)![0]).toBeCloseTo(range, 3)
    expect(points.at(-1)![1]).toBeCloseTo(0, 6)
    expect(points.every(([, y]) => y >= 0)).toBe(true)
  })

  test('the band holds the flight, has no width at the release, and its width at the opening is the margin’s', () => {
    const answer = timing('shot', given.shotInput)
    if (!answer.possible) throw new Error(answer.why.message)
    const { exitSpeed, margin } = answer.quantities
    const band = bandOf(shot, exitSpeed)!
    const path = pathOf(shot, exitSpeed)!.points
    expect(band.upper[0]![1] - band.lower[0]![1]).toBeCloseTo(0, 9)
    for (const [i, [x, low]] of band.lower.entries()) {
      const y = heightAt(path, x)
      expect(y).toBeGreaterThanOrEqual(low - 1e-4)
      expect(y).toBeLessThanOrEqual(band.upper[i]![1] + 1e-4)
    }
    const worst = Math.max(band.upper.at(-1)![1] - shot.targetHeight, shot.targetHeight - band.lower.at(-1)![1])
    expect((shot.opening!.size - shot.pieceDiameter) / 2 - worst).toBeCloseTo(margin!, 3)
    expect(bandOf({ ...shot, speedError: 0, angleError: 0 }, exitSpeed)).toBe(null)
  })

  test('the wheel touches the piece, square to the throw', () => {
    const [x, y] = wheelBelow(shot)
    expect(far([x, y], [0, shot.releaseHeight])).toBeCloseTo((shot.wheelDiameter + shot.pieceDiameter) / 2, 12)
    expect(x * Math.cos(shot.angle) + (y - shot.releaseHeight) * Math.sin(shot.angle)).toBeCloseTo(0, 12)
  })
})

test('a robot and its way have room side by side; the robot is never drawn smaller than to scale', () => {
  fc.assert(
    fc.property(metres(0.01, 200), metres(0.01, 1), fc.integer({ min: 280, max: 720 }), (distance, wheel, width) => {
      const way = wayLayout({ ...drive, distance, wheelDiameter: wheel }, width)
      expect(way.x(0) - way.robotWidth / 2).toBeGreaterThanOrEqual(14 - 1e-6)
      expect(way.x(distance) + way.robotWidth / 2).toBeLessThanOrEqual(width - 14 + 1e-6)
      expect(way.enlarged).toBeGreaterThanOrEqual(1 - 1e-9)
      expect(way.robotWidth).toBeGreaterThan(40)
      expect(way.radius / way.robotPerMetre).toBeCloseTo(wheel / 2, 9)
    }),
  )
})

test('on its whole way in a roller is over the piece, and no roller stands in another', () => {
  fc.assert(
    fc.property(metres(0.005, 0.5), fc.oneof(metres(0.01, 3), metres(3, 100)), (rollerDiameter, diameters) => {
      const travel = diameters * rollerDiameter
      const bed = bedOf({ ...rollers, rollerDiameter, travel })
      for (const at of evenly(0, travel, 31))
        expect(Math.min(...bed.rollers.map((x) => Math.abs(x - at)))).toBeLessThanOrEqual(bed.piece / 2)
      const gaps = bed.rollers.slice(1).map((x, i) => x - bed.rollers[i]!)
      for (const gap of gaps) expect(gap).toBeGreaterThan(rollerDiameter)
    }),
  )
})

test('a piston’s way is its travel, out or in, and a stop beyond the stroke is none', () => {
  const { stroke } = cylinder.cylinder
  expect(tubeOf(cylinder)).toMatchObject({ from: 0, to: stroke, stop: null })
  expect(tubeOf({ ...cylinder, stop: 0.12 })).toMatchObject({ from: 0, to: 0.12, stop: 0.12 })
  const back = tubeOf({ ...cylinder, direction: 'retract', stop: 0.12 })
  expect([back.from, back.to, back.stop]).toEqual([stroke, stroke - 0.12, stroke - 0.12])
  expect(tubeOf({ ...cylinder, stop: stroke + 0.1 }).stop).toBe(null)
})

test('a moment lies straight between the points of a curve, and a share beyond the ends is an end', () => {
  const times = [0, 1, 4]
  const curve = [0, 10, 16]
  expect(momentAt(times, 0.5).time).toBe(2)
  expect(momentAt(times, 0.5).of(curve)).toBe(12)
  expect([-1, 0, 1, 7].map((share) => momentAt(times, share).of(curve))).toEqual([0, 0, 16, 16])
})
