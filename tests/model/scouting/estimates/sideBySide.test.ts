import { describe, expect, it } from 'vitest'
import { EventEstimates, sideBySide } from '../../../../src/model/scouting/estimates/index.ts'
import { normalCdf } from '../../../../src/model/scouting/statistics/index.ts'
import { game } from '../../reference.ts'
import { seenOf, truths } from './world.ts'

const shape = { teams: 8, matches: 4, seed: 3 }
const seen = seenOf(truths(shape), shape)
const teams = [...seen.keys()].slice(0, 4)
const event = new EventEstimates({ game, teams: [...seen.keys(), 'late', 'later'], seen })

describe('teams side by side', () => {
  const { better, total } = sideBySide(event, teams)

  it('are better than each other by chances that add up to 1, and never than themselves', () => {
    for (const chances of Object.values(better))
      for (const [i, row] of chances!.entries())
        for (const [j, chance] of row.entries()) expect(chance + chances![j]![i]!).toBeCloseTo(1, 12)
  })

  it('stand in the order of their means', () => {
    const trips = teams.map((team) => event.team(team).trip!.median.mean)
    let compared = 0
    for (const [i, one] of trips.entries())
      for (const [j, other] of trips.entries()) {
        // Means that lie apart by a tenth: a chance of draws may fall the other way where two are alike.
        if (one > 0.9 * other) continue
        compared++
        expect(better.trip![i]![j]).toBeGreaterThan(0.5)
      }
    expect(compared).toBeGreaterThan(0)
  })

  it('agree with normal beliefs where the two share nothing', () => {
    const [a, b] = teams.map((team) => event.team(team).attempts) as [never, never]
    const sd = ({ interval80: [low, high] }: { interval80: [number, number] }) => (high - low) / (2 * 1.2815515655446)
    const mean = ({ mean: value }: { mean: number }) => value
    // Closed form; gammas are a little skewed, and 1,024 draws have an error of 0.016.
    const closed = normalCdf((mean(a) - mean(b)) / Math.hypot(sd(a), sd(b)))
    expect(Math.abs(better.attempts![0]![1]! - closed)).toBeLessThan(0.06)
  })

  it('add the parts of a match up', () => {
    for (const [t, team] of teams.entries()) {
      const { points, finishPoints, autonomousPoints } = event.team(team)
      expect(total[t]!.mean).toBeCloseTo(points.mean + finishPoints.mean + autonomousPoints.mean, 9)
    }
  })

  it('are as good as each other where nothing is known of either, within the draws', () => {
    const chance = sideBySide(event, ['late', 'later']).better.points![0]![1]!
    expect(Math.abs(chance - 0.5)).toBeLessThan(4 * 0.5 * Math.sqrt(1 / 1024))
  })
})
