import { expect, test } from 'vitest'
import { steadyFrom } from '../../../web/stands/record/steady.ts'

const noon = Date.parse('2026-11-27T12:00:00Z')
const opened = { wall: noon, running: 5000 }
const minute = 60_000

test('A match is timed by what passes, wherever the phone’s clock is moved to meanwhile', () => {
  const after = (seconds: number, clock: number) =>
    steadyFrom(opened, { wall: clock, running: 5000 + 1000 * seconds }) - noon
  expect(after(30, noon + 30_000)).toBe(30_000)
  // A day on, a day back, and ten seconds back.
  expect(after(30, noon + 30_000 + 1440 * minute)).toBe(30_000)
  expect(after(30, noon + 30_000 - 1440 * minute)).toBe(30_000)
  expect(after(30, noon + 20_000)).toBe(30_000)
  // The page stood still for three minutes, because the phone slept: the clock knows.
  expect(after(30, noon + 3.5 * minute)).toBe(3.5 * minute)
})
