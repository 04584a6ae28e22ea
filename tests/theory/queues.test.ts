import { describe, expect, it, test } from 'vitest'
import type { Duration } from '../../src/model/documents/types.ts'
import { Matches, simulate } from '../../src/model/match/run.ts'
import { Roster } from '../../src/model/match/setup.ts'
import { sampleMatches } from '../../src/model/match/timeline.ts'
import { carrier, fixed, quay, three } from './quay.ts'
import { machineRepairman } from './queues.ts'

describe('the closed form that the simulation is held against', () => {
  /** checks.md 4.4: Heizer & Render, Module D (five printers); Taha, Toolco (22 machines), recomputed. */
  it.each([
    [{ customers: 5, servers: 1, thinking: 20, service: 2 }, 0.639521769, 0.933264356],
    [{ customers: 5, servers: 2, thinking: 20, service: 2 }, 0.464794396, 0.0497169747],
    [{ customers: 22, servers: 1, thinking: 2, service: 0.2 }, 12.0040403, 2.20177846],
    [{ customers: 22, servers: 2, thinking: 2, service: 0.2 }, 4.36777387, 0.295430791],
    [{ customers: 22, servers: 4, thinking: 2, service: 0.2 }, 2.10019684, 0.0110771472],
  ])('gives the published values for %o', (of, present, wait) => {
    const own = machineRepairman(of)
    expect(Math.abs(own.present / present - 1)).toBeLessThan(1e-8)
    expect(Math.abs(own.wait / wait - 1)).toBeLessThan(1e-8)
  })

  /** checks.md 4.5: Reiser & Lavenberg, JACM 27:313–322 (1980), exact mean value analysis. */
  it('gives the cyclic queue of three with service 4 and travel 12', () => {
    const own = machineRepairman({ customers: 3, servers: 1, thinking: 12, service: 4 })
    expect(own.time).toBeCloseTo(6.35294118, 8)
    expect(own.rate).toBeCloseTo(0.163461538, 8)
  })
})

/** checks.md 4.6: closed cyclic queues with times that do not vary; Denning & Buzen, ACM Computing Surveys 10:225–261 (1978). */
describe('three robots at one goal, every time fixed', () => {
  test.each([
    { service: 4, travel: 12, until: 150, pieces: 26, first: [16, 20, 24, 32, 36, 40], waits: [0, 4, 8, 0, 0, 0] },
    { service: 6, travel: 6, until: 150, pieces: 24, first: [12, 18, 24, 30, 36, 42], waits: [0, 6, 12, 6, 6, 6] },
    { service: 5, travel: 10, until: 135, pieces: 25, first: [15, 20, 25, 30, 35, 40], waits: [0, 5, 10, 0, 0, 0] },
  ])(
    'service $service s, travel $travel s: $pieces pieces by $until s',
    ({ service, travel, until, pieces, first, waits }) => {
      const game = quay(until, 1)
      const ours = three(carrier(fixed(travel), fixed(service)))
      const { typical } = sampleMatches({ game, ours, theirs: ours, seed: 1 })
      const events = typical.events.filter(({ robot }) => robot < 3)
      const placed = events.flatMap((event) => (event.kind === 'places' ? [event.at] : []))
      expect(placed.slice(0, 6)).toEqual(first)
      expect(placed.length).toBe(pieces)
      const arrivals = new Map<number, number>()
      const waited: number[] = []
      for (const event of events) {
        if (event.kind === 'drives' && event.place === 'crane') arrivals.set(event.robot, event.until)
        if (event.kind === 'works' && event.place === 'crane') waited.push(event.at - arrivals.get(event.robot)!)
      }
      expect(waited.slice(0, 6)).toEqual(waits)
    },
  )
})

/** Equally likely times at the middles of equal shares; their mean is put right, what is cut off the tail is 0.05 % of the variance. */
function exponential(mean: number, count = 2000): Duration {
  const seconds = Array.from({ length: count }, (_, k) => -mean * Math.log(1 - (k + 0.5) / count))
  const own = seconds.reduce((sum, time) => sum + time, 0) / count
  return { kind: 'samples', seconds: seconds.map((time) => (time * mean) / own) }
}

describe('three robots at a goal, every time exponential', () => {
  it.each([
    { slots: 1, thinking: 12, service: 4 },
    { slots: 2, thinking: 12, service: 4 },
    { slots: 1, thinking: 5, service: 5 },
  ])(
    'wait and deliver as the machine-repairman queue says: %o',
    { timeout: 120_000 },
    ({ slots, thinking, service }) => {
      const teleop = 600
      const replicates = 500
      const option = carrier(exponential(thinking), exponential(service))
      const report = simulate({
        game: quay(teleop, slots),
        ours: three(option),
        theirs: three(option),
        replicates,
        seed: 3,
        checked: true,
      })
      const theory = machineRepairman({ customers: 3, servers: slots, thinking, service })
      const wait = report.robots.slice(0, 3).reduce((sum, robot) => sum + robot.waiting['crane']!.mean, 0)
      const pieces = report.robots.slice(0, 3).reduce((sum, robot) => sum + robot.pieces['crane']!.mean, 0)
      // All begin by thinking, so the first trips find the goal emptier than later ones do: some thinking times are lost.
      const lost = (2 * (thinking + service)) / teleop
      const rateError = (4 * Math.sqrt(theory.rate * teleop)) / Math.sqrt(replicates) / teleop
      expect(Math.abs(pieces / teleop - theory.rate)).toBeLessThan(rateError + lost * theory.rate)
      const perPiece = wait / pieces
      const scatter = (4 * 3 * report.robots[0]!.waiting['crane']!.sd) / Math.sqrt(3 * replicates) / pieces
      expect(Math.abs(perPiece - theory.wait)).toBeLessThan(scatter + lost * theory.wait)
      // The wrong number of servers would be far off.
      const other = machineRepairman({ customers: 3, servers: slots === 1 ? 2 : 1, thinking, service })
      expect(Math.abs(perPiece - other.wait)).toBeGreaterThan(scatter + lost * other.wait)
    },
  )
})

describe('matches are the same however they are shared out', () => {
  it('gives blocks the same sums in whatever order they are played', () => {
    const option = carrier(exponential(12), exponential(4))
    const setup = new Roster(quay(100, 1)).setup(three(option), three(option))
    const matches = new Matches(setup, { seed: 5 })
    const late = matches.play(500, 1000)
    const early = matches.play(0, 500)
    const again = new Matches(setup, { seed: 5 })
    expect(again.play(0, 500)).toEqual(early)
    expect(again.play(500, 1000)).toEqual(late)
  })
})
