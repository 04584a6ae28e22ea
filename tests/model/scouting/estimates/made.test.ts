import { describe, expect, it } from 'vitest'
import { EventEstimates, type Made } from '../../../../src/model/scouting/estimates/index.ts'
import { madeOf } from '../../../../src/model/scouting/estimates/made.ts'
import { game } from '../../reference.ts'
import { seenOf, truths } from './world.ts'

const shape = { teams: 10, matches: 4, seed: 11, stops: 0.1 }
const seen = seenOf(truths(shape), shape)
const [team, other] = [...seen.keys()] as [string, string]
const claims = new Map([[team, { goals: { pier: 9 }, cycle: 8, finish: game.finishes[0]!.id }]])
const event = new EventEstimates({ game, teams: [...seen.keys(), 'late'], seen, claims })

const parts = ({ own, claimed, event: all }: Made) => [own, claimed, all].flatMap((part) => part ?? [])
const total = (made: Made) => parts(made).reduce((sum, { mean, share }) => sum + mean * share, 0)

describe('what a number is made of', () => {
  const of = event.team(team)
  const made = madeOf(event, team)

  it('adds up to the number itself', () => {
    const all: [Made, { mean: number; interval95: readonly [number, number] }][] = [
      [made.attempts, of.attempts],
      [made.leaves, of.leaves],
      [made.stops, of.stops],
      [made.absent, of.absent],
      [made.departs, of.departs],
      ...game.finishes.map(({ id }): [Made, typeof of.leaves] => [made.finish[id]!, of.finish[id]!]),
      ...game.goals.flatMap(({ id }): [Made, typeof of.leaves][] => [
        [made.goals[id]!.success, of.goals[id]!.success],
        [made.goals[id]!.autonomous, of.autonomous[id]!],
      ]),
    ]
    for (const [each, { mean, interval95 }] of all) {
      expect(parts(each).reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
      // The number is a mean of 1,024 draws: four of its standard errors, a draw's spread taken as a quarter of the 95 %.
      const error = (4 * (interval95[1] - interval95[0])) / 4 / Math.sqrt(1024)
      expect(Math.abs(total(each) - mean)).toBeLessThan(error + 1e-9)
    }
    // Half of the spread of a log-normal's square lies between its mean and the mean of logarithms.
    const { median } = of.trip!
    const log = parts(made.trip!).reduce((sum, { mean, share }) => sum + Math.log(mean) * share, 0)
    expect(Math.exp(log) / median.mean).toBeCloseTo(1, 1.5)
  })

  it('shows the share that stands beside the number', () => {
    expect(made.attempts.own!.share).toBeCloseTo(of.attempts.ownWeight, 2)
    expect(made.trip!.own!.share).toBeCloseTo(of.trip!.median.ownWeight, 9)
    expect(made.stops.own!.share).toBeCloseTo(of.stops.ownWeight, 9)
    const finish = game.finishes[0]!.id
    expect(made.finish[finish]!.own!.share).toBeCloseTo(of.finish[finish]!.ownWeight, 9)
  })

  it('says of each match what was seen in it, and averages to what is its own', () => {
    const watched = seen.get(team)!.filter(({ teleop }) => teleop)
    expect(made.attempts.matches.map(({ match }) => match)).toEqual(watched.map(({ match }) => match))
    expect(made.attempts.matches.every(({ records }) => records.length === 1)).toBe(true)
    const seconds = made.attempts.matches.reduce((sum, each) => sum + each.seen * each.weight, 0)
    const pieces = made.attempts.matches.reduce((sum, each) => sum + each.value * each.seen * each.weight, 0)
    // To the team's own departure, as the number is.
    const { teleop, usual } = event.measures
    const whole = (teleop - event.dataOf(team).departing.mean) / usual
    expect(made.attempts.own!.mean).toBeCloseTo((whole * pieces) / seconds, 9)
    const hits = made.goals['pier']!.success
    const tries = hits.matches.reduce((sum, each) => sum + each.seen, 0)
    expect(hits.own!.mean).toBeCloseTo(hits.matches.reduce((sum, each) => sum + each.value * each.seen, 0) / tries, 9)
  })

  it('names what the team says of itself, and only where it says something', () => {
    expect(made.attempts.claimed!.share).toBeGreaterThan(0)
    expect(made.attempts.claimed!.share).toBeLessThan(made.attempts.own!.share)
    expect(made.trip!.claimed!.mean).toBeLessThan(8)
    const silent = madeOf(event, other)
    expect([silent.attempts.claimed, silent.trip!.claimed]).toEqual([null, null])
  })

  it('is the event alone for a team that was never seen', () => {
    const late = madeOf(event, 'late')
    for (const each of [late.attempts, late.stops, late.finish[game.finishes[0]!.id]!, late.trip!]) {
      expect([each.matches, each.own, each.event.share]).toEqual([[], null, 1])
    }
    expect(late.running).toEqual([])
  })
})

describe('the running estimate', () => {
  it('ends at what is believed now, and is surer after each match', () => {
    const { running } = madeOf(event, other)
    const now = event.team(other).attempts
    expect(running.at(-1)!.mean).toBeCloseTo(now.mean, 9)
    const width = ({ interval80: [low, high] }: (typeof running)[number]) => (high - low) / (low + high)
    expect(width(running.at(-1)!)).toBeLessThan(width(running[0]!))
  })

  it('follows the last matches where matches are forgotten', () => {
    const forgetful = new EventEstimates({ ...event.input, weighing: { halfLife: 1, discount: 0.4 } })
    const [all, last] = [event, forgetful].map((each) => madeOf(each, other).attempts)
    expect(last!.matches.map(({ weight }) => weight)).toEqual(
      all!.matches.map((_, m) => 2 ** (m + 1 - all!.matches.length)),
    )
  })
})
