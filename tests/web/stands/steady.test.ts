import { expect, test } from 'vitest'
import { Steady } from '../../../web/stands/record/steady.ts'

const noon = Date.parse('2026-11-27T12:00:00Z')
const minute = 60_000

/** So many seconds after noon by what runs, with the phone's clock moved by so many minutes. */
const after = (seconds: number, moved = 0) => ({
  wall: noon + 1000 * seconds + moved * minute,
  running: 5000 + 1000 * seconds,
})
const opened = () => new Steady(after(0))

test('A match is timed by what passes, wherever the phone’s clock is moved to while the page is in sight', () => {
  for (const moved of [0, 1440, -1440, -1 / 6, 0.5, 5, 19]) expect(opened().at(after(30, moved)) - noon).toBe(30_000)
})

test('What a phone sleeps out of sight has passed as well, once', () => {
  const steady = opened()
  steady.outOfSight(after(10))
  steady.outOfSight(after(11))
  // What runs stood still for three minutes.
  steady.inSight(after(12, 3))
  expect(steady.at(after(30, 3)) - noon).toBe(30_000 + 3 * minute)
  steady.inSight(after(31, 3))
  expect(steady.at(after(31, 8)) - noon).toBe(31_000 + 3 * minute)
  // Whose running time goes on in its sleep has nothing to make good.
  steady.outOfSight(after(40, 3))
  steady.inSight(after(400, 3))
  expect(steady.at(after(400, 3)) - noon).toBe(400_000 + 3 * minute)
})

test('A clock that was moved before, far ahead or back is not taken for sleep', () => {
  const steady = opened()
  steady.outOfSight(after(20, 5))
  steady.inSight(after(30, 5))
  expect(steady.at(after(40, 5)) - noon).toBe(40_000)
  for (const moved of [1445, -60]) {
    steady.outOfSight(after(50, 5))
    steady.inSight(after(60, moved))
    expect(steady.at(after(60, moved)) - noon).toBe(60_000)
  }
})
