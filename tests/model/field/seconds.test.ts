import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { travelSeconds } from '../../../src/model/field/index.ts'

type Pieces = Parameters<typeof travelSeconds>[0]
type Limits = Parameters<typeof travelSeconds>[1]

const line = (length: number) => ({ kind: 'line', length }) as const
const arc = (radius: number, turn: number) => ({ kind: 'arc', length: radius * turn, radius, turn }) as const

describe('a straight run from rest to rest', () => {
  // checks.md 5.1: Biagiotti & Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), section 3.2.
  test.each([
    { distance: 10, topSpeed: 4, acceleration: 2, deceleration: 2, seconds: 4.5 },
    { distance: 3, topSpeed: 4, acceleration: 2, deceleration: 2, seconds: Math.sqrt(6) },
    { distance: 8, topSpeed: 4, acceleration: 2, deceleration: 2, seconds: 4 },
    { distance: 5, topSpeed: 3, acceleration: 2, deceleration: 4, seconds: 2.7916666666667 },
    { distance: 1, topSpeed: 3, acceleration: 2, deceleration: 4, seconds: Math.sqrt(1.5) },
    { distance: 0, topSpeed: 4, acceleration: 2, deceleration: 2, seconds: 0 },
  ])('of $distance m with a top speed of $topSpeed m/s takes $seconds s', ({ distance, seconds, ...drive }) => {
    expect(Math.abs(travelSeconds([line(distance)], drive) - seconds)).toBeLessThan(1e-10)
  })

  test('takes as long in two pieces as in one', () => {
    const drive = { topSpeed: 4, acceleration: 2.5, deceleration: 3.5 }
    expect(travelSeconds([line(1.2), line(6.1)], drive)).toBeCloseTo(travelSeconds([line(7.3)], drive), 12)
  })
})

describe('an arc', () => {
  const drive = { topSpeed: 4, acceleration: 2, deceleration: 3 }

  test('of a U-turn is taken at √(acceleration · radius), which is braked for and left again', () => {
    // By hand: v = √(2 · 0.5 / (1 − cos 90°)) = 1. Up to the peak p and down to 1 over 5 m: p²/4 + (p² − 1)/6 = 5 → p² = 12.4;
    // from 1 up to q and down to rest over 5 m: (q² − 1)/4 + q²/6 = 5 → q² = 12.6.
    const p = Math.sqrt(12.4)
    const q = Math.sqrt(12.6)
    const seconds = p / 2 + (p - 1) / 3 + Math.PI * 0.5 + (q - 1) / 2 + q / 3
    expect(travelSeconds([line(5), arc(0.5, Math.PI), line(5)], drive)).toBeCloseTo(seconds, 10)
  })

  test('of a slight bend costs nothing', () => {
    const bend = arc(0.5, 0.1)
    expect(travelSeconds([line(5), bend, line(5)], drive)).toBeCloseTo(
      travelSeconds([line(10 + bend.length)], drive),
      12,
    )
  })

  test('limits by its whole turn: two halves with a straight between them are faster than one turn', () => {
    const whole = travelSeconds([line(4), arc(0.5, 2), line(0.01), line(4)], drive)
    const halves = travelSeconds([line(4), arc(0.5, 1), line(0.01), arc(0.5, 1), line(4)], drive)
    expect(halves).toBeLessThan(whole - 0.05)
  })

  test('limits the pieces before it where there is no room to brake between', () => {
    // 10 cm after a U-turn of 1 m/s a milder one that allows 2 m/s can not be entered faster than √(1 + 2 · 2 · 0.1).
    const tight = arc(0.5, Math.PI)
    const after = travelSeconds([tight, line(0.1), line(3)], drive)
    const limited = travelSeconds(
      [tight, line(0.1), { kind: 'arc', length: 0, radius: 0.5, turn: 0.7 }, line(3)],
      drive,
    )
    expect(limited).toBeCloseTo(after, 12)
  })

  test('of radius 0 is a stop, since a point can not drive round a corner', () => {
    const stop = { kind: 'arc', length: 0, radius: 0, turn: 1 } as const
    expect(travelSeconds([line(5), stop, line(3)], drive)).toBeCloseTo(
      travelSeconds([line(5)], drive) + travelSeconds([line(3)], drive),
      12,
    )
  })
})

/** Seconds by brute force: squared speed on a fine grid of the way, limited forwards, backwards and by each piece. */
function integrated(pieces: Pieces, { topSpeed, acceleration, deceleration }: Limits): number {
  const total = pieces.reduce((sum, { length }) => sum + length, 0)
  const count = 40_000
  const step = total / count
  const square = new Float64Array(count + 1).fill(topSpeed ** 2)
  let begin = 0
  for (const piece of pieces) {
    const end = begin + piece.length
    if (piece.kind === 'arc') {
      const limit = (acceleration * piece.radius) / (1 - Math.cos(piece.turn / 2))
      for (let i = Math.ceil(begin / step); i <= Math.min(count, Math.floor(end / step)); i++) {
        square[i] = Math.min(square[i]!, limit)
      }
    }
    begin = end
  }
  square[0] = 0
  square[count] = 0
  for (let i = 1; i <= count; i++) square[i] = Math.min(square[i]!, square[i - 1]! + 2 * acceleration * step)
  for (let i = count - 1; i >= 0; i--) square[i] = Math.min(square[i]!, square[i + 1]! + 2 * deceleration * step)
  let seconds = 0
  for (let i = 0; i < count; i++) seconds += (2 * step) / (Math.sqrt(square[i]!) + Math.sqrt(square[i + 1]!))
  return seconds
}

const limits = fc.record({
  topSpeed: fc.double({ min: 0.5, max: 5, noNaN: true }),
  acceleration: fc.double({ min: 0.5, max: 8, noNaN: true }),
  deceleration: fc.double({ min: 0.5, max: 8, noNaN: true }),
})
const pieces = fc.array(
  fc.oneof(
    fc.double({ min: 0.1, max: 8, noNaN: true }).map(line),
    fc
      .tuple(fc.double({ min: 0.1, max: 0.8, noNaN: true }), fc.double({ min: 0.2, max: 3.1, noNaN: true }))
      .map(([radius, turn]) => arc(radius, turn)),
  ),
  { minLength: 1, maxLength: 7 },
)

test('any route takes as long as its speed integrated step by step', () => {
  fc.assert(
    fc.property(pieces, limits, (route, drive) => {
      const exact = travelSeconds(route, drive)
      const total = route.reduce((sum, { length }) => sum + length, 0)
      // The grid blurs each border of a piece by one step, driven at not less than the slowest arc's speed.
      const slowest = Math.min(drive.topSpeed, Math.sqrt((drive.acceleration * 0.1) / 2))
      const blur = ((2 * total) / 40_000 / slowest) * (route.length + 2)
      expect(Math.abs(integrated(route, drive) - exact)).toBeLessThan(blur + 1e-6)
    }),
    { numRuns: 60, seed: 1 },
  )
})

test('no route is faster than its length at top speed, and more speed or grip never takes longer', () => {
  fc.assert(
    fc.property(pieces, limits, fc.double({ min: 1, max: 3, noNaN: true }), (route, drive, more) => {
      const seconds = travelSeconds(route, drive)
      const total = route.reduce((sum, { length }) => sum + length, 0)
      expect(seconds).toBeGreaterThanOrEqual(total / drive.topSpeed)
      for (const name of ['topSpeed', 'acceleration', 'deceleration'] as const) {
        expect(travelSeconds(route, { ...drive, [name]: drive[name] * more })).toBeLessThanOrEqual(seconds + 1e-9)
      }
    }),
    { seed: 2 },
  )
})
