import { describe, expect, it } from 'vitest'
import {
  type EstimateInput,
  EventEstimates,
  type TeamEstimate,
} from '../../../../src/model/scouting/estimates/index.ts'
import type { TeamMatch } from '../../../../src/model/scouting/seen/index.ts'
import { seenIn } from '../../../../src/model/scouting/seen/index.ts'
import { gammaQuantile } from '../../../../src/model/scouting/statistics/index.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { game } from '../../reference.ts'
import { Chance, expectationOf, play, record, seenOf, type Truth, truths } from './world.ts'

/** Matches of which only the pieces at the pier were counted. */
const counted = (team: string, pieces: readonly number[], change: Partial<TeamMatch> = {}): TeamMatch[] =>
  pieces.map((scored, m) => {
    const goals = [{ goal: 'pier', period: 'teleop' as const, scored, missed: 0 }]
    const played = { timeline: [], finish: { attempted: null, achieved: null }, attempts: 0, points: 0 }
    const observation = { ...record(team, `m${m}`, played, true), counts: goals }
    return { ...seenIn(game, observation), match: `m${m}`, era: 0, ...change }
  })

const eventOf = (seen: Map<string, TeamMatch[]>, more: Partial<EstimateInput> = {}) =>
  new EventEstimates({ game, teams: [...seen.keys()], seen, ...more })

/** 24 teams about a mean of 4 pieces a match, each seen three times. */
const event = () => {
  const chance = new Chance(4, 1)
  const pieces = (mean: number) => Math.max(0, Math.round(mean + 2 * chance.normal()))
  return new Map(
    Array.from({ length: 24 }, (_, t): [string, TeamMatch[]] => {
      const mean = 2.5 + (3 * t) / 23
      return [`t${t}`, counted(`t${t}`, [pieces(mean), pieces(mean), pieces(mean)])]
    }),
  )
}

describe('what a team says of itself', () => {
  it('moves an estimate by no more than half a match does', () => {
    const seen = event().set('boaster', counted('boaster', [4, 4, 4]))
    const plain = eventOf(seen).team('boaster').attempts
    const claims = new Map([['boaster', { goals: { pier: 12 } }]])
    const claiming = eventOf(seen, { claims })
    expect(plain.mean).toBeGreaterThan(3.7)
    expect(plain.mean).toBeLessThan(4.3)
    expect(claiming.team('boaster').attempts.mean).toBeLessThanOrEqual(5.2)
    expect(claiming.team('boaster').attempts.mean).toBeGreaterThan(plain.mean)
    // Nobody else is thought of differently.
    expect(claiming.team('t3').attempts).toMatchObject({ mean: eventOf(seen).team('t3').attempts.mean })
  })
})

describe('a team', () => {
  it('that was never seen is what the event is, and says so', () => {
    const seen = event().set('late', [])
    const { attempts, neverSeen, matches } = eventOf(seen).team('late')
    expect([neverSeen, matches, attempts.ownWeight]).toEqual([true, 0, 0])
    expect(attempts.mean).toBeGreaterThan(3.3)
    expect(attempts.mean).toBeLessThan(4.7)
    expect(attempts.interval80[1] - attempts.interval80[0]).toBeGreaterThan(1)
  })

  it('is drawn less to the others the more it was seen', () => {
    const one = eventOf(event().set('good', counted('good', [9]))).team('good').attempts
    const many = eventOf(event().set('good', counted('good', new Array(12).fill(9)))).team('good').attempts
    expect(one.mean).toBeLessThan(many.mean)
    expect(many.mean).toBeLessThan(9)
    expect(one.ownWeight).toBeLessThan(many.ownWeight)
    expect(one.interval95[1] - one.interval95[0]).toBeGreaterThan(many.interval95[1] - many.interval95[0])
  })

  it('that was changed starts anew from the discounted matches before', () => {
    const before = counted('new', [2, 2, 2, 2])
    const plain = eventOf(event().set('new', before)).team('new').attempts
    const changed = eventOf(event().set('new', before), { changes: new Map([['new', 1]]) }).team('new').attempts
    expect(changed.mean).toBeGreaterThan(plain.mean)
    expect(changed.ownWeight).toBeLessThan(plain.ownWeight)
  })

  it('brings along an earlier event, at a discount that a change cuts once more', () => {
    const [seen] = counted('back', [8])
    const earlier = (steps: number) =>
      new Map([['back', Array.from({ length: 8 }, () => ({ seen: seen as TeamMatch, steps }))]])
    const of = (more: Partial<EstimateInput>) => eventOf(event().set('back', []), more).team('back')
    const [none, one, two] = [of({}), of({ earlier: earlier(1) }), of({ earlier: earlier(2) })]
    expect(none.neverSeen).toBe(true)
    expect(one.neverSeen).toBe(false)
    expect(one.attempts.mean).toBeGreaterThan(two.attempts.mean)
    expect(two.attempts.mean).toBeGreaterThan(none.attempts.mean)
  })

  it('is its last matches where ages weigh', () => {
    const seen = event().set('rising', counted('rising', [1, 1, 1, 1, 9, 9]))
    const mean = (halfLife: number) =>
      eventOf(seen, { weighing: { halfLife, discount: 0.4 } }).team('rising').attempts.mean
    expect(mean(1)).toBeGreaterThan(mean(4) + 0.5)
    expect(mean(4)).toBeGreaterThan(mean(Number.POSITIVE_INFINITY) + 0.3)
  })

  it('of another event is refused', () => {
    expect(() => eventOf(event()).team('stranger')).toThrow('stranger is not a team of this event')
  })
})

it('an event of nobody and an event of nothing seen have estimates', () => {
  expect(eventOf(new Map()).measures.dispersion).toBe(1)
  const { attempts, trip, finish, points } = eventOf(new Map([['a', []]])).team('a')
  expect(trip).toBeNull()
  for (const { mean, interval95 } of [attempts, finish['davit']!, points]) {
    expect(Number.isFinite(mean)).toBe(true)
    expect(interval95.every(Number.isFinite)).toBe(true)
  }
})

it('the same records give the same estimates, whatever was asked before', () => {
  const seen = event()
  const one = eventOf(seen)
  one.team('t5')
  expect(JSON.stringify(one.team('t3'))).toBe(JSON.stringify(eventOf(seen).team('t3')))
})

it('one more record gives the same as all of them from nothing', () => {
  const all = truths({ teams: 12, matches: 5, seed: 8, volley: 3 })
  const before = seenOf(all, { matches: 4, seed: 8 })
  const after = seenOf(all, { matches: 5, seed: 8 })
  const everything = (estimates: EventEstimates) =>
    JSON.stringify([...before.keys()].map((team) => getters(estimates.team(team))))
  const first = everything(eventOf(before))
  // Matches of the others are the very ones that were looked at before.
  const added = everything(eventOf(new Map(before).set('t3', after.get('t3')!)))
  const copied = structuredClone(new Map(before).set('t3', after.get('t3')!))
  expect(added).toBe(everything(eventOf(copied)))
  expect(added).not.toBe(first)
})

/** All that is computed when it is asked for. */
const getters = (of: TeamEstimate) => {
  const { attempts, points, goals, trip, pieces, finish, finishPoints, autonomousPoints, absent, stops, departs } = of
  const next = [attempts.next80, points.next80, trip?.median.next80]
  return { attempts, points, goals, trip, pieces, finish, finishPoints, autonomousPoints, absent, stops, departs, next }
}

it('volleys of five pieces on long trips are neither lost nor counted twice', () => {
  const volleys = truths({ teams: 20, matches: 12, seed: 31 }).map(
    (truth): Truth => ({ ...truth, trip: 14, pieces: [0, 0, 0, 0, 1], stops: 0 }),
  )
  const estimates = eventOf(seenOf(volleys, { matches: 12, seed: 31 }))
  const mean = (values: number[]) => values.reduce((sum, x) => sum + x, 0) / values.length
  const forecast = mean(volleys.map(({ team }) => estimates.team(team).attempts.mean))
  const truth = expectationOf(volleys[0]!, 3, 4000).attempts
  expect(Math.abs(forecast / truth - 1)).toBeLessThan(0.03)
  // Five pieces come together, so that counts vary about five times as much.
  const single = volleys.map((truth): Truth => ({ ...truth, pieces: [1] }))
  const alone = eventOf(seenOf(single, { matches: 12, seed: 31 })).measures.dispersion
  expect(estimates.measures.dispersion / alone).toBeGreaterThan(3.5)
  expect(estimates.team('t0').pieces[4]!.mean).toBeGreaterThan(0.9)
})

// Where teams differ as much as matches of one team do: the Gamma–Poisson's own best is 0.75 after three matches, 0.91 after ten.
it.each([
  [3, 0.8],
  [10, 0.95],
])('after %i matches squared errors are at most %f of those of simple averages', (matches, most) => {
  const errors = { own: 0, simple: 0 }
  for (let e = 0; e < 8; e++) {
    const chance = new Chance(900 + e, 1)
    const poisson = (mean: number) => {
      let [time, count] = [-Math.log(chance.uniform()), 0]
      for (; time < mean; count++) time -= Math.log(chance.uniform())
      return count
    }
    const truth = new Map(Array.from({ length: 60 }, (_, t) => [`t${t}`, gammaQuantile(chance.uniform(), 9, 1)]))
    const pieces = new Map(
      [...truth].map(([team, rate]) => [team, Array.from({ length: matches }, () => poisson(rate))]),
    )
    const estimates = eventOf(new Map([...pieces].map(([team, own]) => [team, counted(team, own)])))
    for (const [team, rate] of truth) {
      errors.own += (estimates.team(team).attempts.mean - rate) ** 2
      errors.simple += (pieces.get(team)!.reduce((sum, n) => sum + n, 0) / matches - rate) ** 2
    }
  }
  expect(errors.own / errors.simple).toBeLessThan(most)
})

/**
 * Shares of intervals that hold the truth, over whole events. The bands are those that the issue asks for, widened by three
 * standard errors of so many events (by event, since one event's teams share its luck). The simulator's events
 * (`simulated.test.ts`) ask the same in the normal form.
 */
describe
  .runIf(inLongForm)
  .each([3, 6, 10].flatMap((matches) => [0.02, 0.1, 0.18].map((form) => ({ matches, form, events: 30, teams: 60 }))))(
  'intervals after $matches matches with form $form',
  ({ matches, form, events, teams }) => {
    it('hold the truth as often as they say', { timeout: 600_000 }, () => {
      const shares = new Map<string, number[]>()
      for (let e = 0; e < events; e++) {
        const shape = { teams, matches, seed: 500 + e, form, volley: 1 + (e % 3) * 2, strategy: e % 2 === 0 ? 0 : 0.1 }
        const all = truths(shape)
        const estimates = eventOf(seenOf(all, shape))
        const hits = new Map<string, number[]>()
        const note = (name: string, value: number, [low, high]: readonly [number, number]) =>
          hits.set(name, [...(hits.get(name) ?? []), Number(value >= low && value <= high)])
        for (const truth of all) {
          const own = estimates.team(truth.team)
          const { attempts, points } = expectationOf(truth, e, 400)
          const next = play(truth, new Chance(e, 70_000 + e), false)
          for (const [name, value, estimate] of [
            ['attempts', attempts, own.attempts],
            ['points', points, own.points],
            ['trip', truth.trip, own.trip!.median],
            ['success', truth.success.pier, own.goals['pier']!.success],
            ['finish', truth.finish, own.finish['davit']!],
          ] as const) {
            note(`80 ${name}`, value, estimate.interval80)
            note(`95 ${name}`, value, estimate.interval95)
          }
          note('80 next points', next.points, own.points.next80!)
        }
        for (const [name, own] of hits)
          shares.set(name, [...(shares.get(name) ?? []), own.reduce((sum, x) => sum + x, 0) / own.length])
      }
      for (const [name, each] of shares) {
        const mean = each.reduce((sum, x) => sum + x, 0) / events
        const byEvent = each.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (events - 1) / events
        const level = name.startsWith('80') ? 0.8 : 0.95
        // Few events hardly know their own spread: no less than that of so many teams that had nothing to do with each other.
        const error = Math.sqrt(Math.max(byEvent, (level * (1 - level)) / (events * teams)))
        const [low, high] = name.startsWith('80') ? [0.75, 0.85] : [0.91, 0.97]
        expect(mean, `${name} ± ${error}`).toBeGreaterThan(low - 3 * error)
        expect(mean, `${name} ± ${error}`).toBeLessThan(high + 3 * error)
      }
    })
  },
)
