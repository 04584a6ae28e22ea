import { expect, it } from 'vitest'
import { inLongForm } from '../../../browser/longForm.ts'
import { coverageOf, shapeOf } from './coverage.ts'

/**
 * Intervals against matches that the simulator plays: form 1.0, 1.1 and 1.2, volleys, outages, changes of strategy. Bands are the
 * measure's: 200 events of 60 teams each within 75–85 % and 91–97 %; 20 smaller events within 6 points of what is said.
 */
const measure = inLongForm
  ? { events: 200, teams: 60, truthIn: 600, stages: [3, 6, 10], of80: [0.75, 0.85], of95: [0.91, 0.97] }
  : { events: 20, teams: 24, truthIn: 150, stages: [6], of80: [0.74, 0.86], of95: [0.89, 1] }

it('intervals hold what is true of simulated robots, and their next match, as often as they say', {
  timeout: inLongForm ? 3_600_000 : 30_000,
}, () => {
  const { events, teams, truthIn, stages } = measure
  const matches = Math.max(...stages)
  const shapes = Array.from({ length: events }, (_, e) => shapeOf(e, { teams, matches, truthIn }))
  const found = coverageOf(shapes, stages)
  expect(found.size).toBe(12 * stages.length)
  for (const [name, { mean, error }] of found) {
    const [low, high] = (name.startsWith('80') ? measure.of80 : measure.of95) as [number, number]
    expect(mean, `${name} ± ${error}`).toBeGreaterThanOrEqual(low)
    expect(mean, `${name} ± ${error}`).toBeLessThanOrEqual(high)
  }
})
