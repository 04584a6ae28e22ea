import { describe, expect, it } from 'vitest'
import { matchesWorth, type PastEstimate } from '../../../../src/model/scouting/estimates/earlier.ts'
import {
  type EstimateInput,
  EventEstimates,
  earlierChanges,
  estimatesOfEvent,
  eventEstimates,
  madeOfEvent,
  type TeamEstimate,
} from '../../../../src/model/scouting/estimates/index.ts'
import { type EstimateReport, estimateReport } from '../../../../src/model/scouting/estimates/report.ts'
import type { Match, Side } from '../../../../src/model/scouting/types.ts'
import { game } from '../../reference.ts'
import { Chance, play, record, seenOf, truths } from './world.ts'

const shape = { teams: 18, matches: 4, seed: 21, volley: 2 }
const all = truths(shape)
const seen = seenOf(all, shape).set('back', [])
const eventOf = (more: Partial<EstimateInput> = {}) =>
  new EventEstimates({ game, teams: [...seen.keys()], seen, ...more })

const mean = (x: number) => ({ mean: x })
const past: PastEstimate = {
  matches: 8,
  goals: {
    pier: { attempts: mean(16), success: mean(0.9) },
    gantry: { attempts: mean(10), success: mean(0.4) },
    lightship: { attempts: mean(0), success: mean(0.5) },
  },
  trip: { time: { median: mean(8), within: mean(1.3) }, form: mean(1.1), pieces: { 1: mean(0.4), 2: mean(0.6) } },
  finish: { davit: mean(0.9), none: mean(0.1), drydock: mean(0) },
  absent: mean(0),
  stops: mean(0),
}
const told = (discount: number, estimate = past) => new Map([['back', { estimate, discount }]])

/** What is estimated of a team, to be told elsewhere. */
function pastOf(event: EventEstimates, team: string): PastEstimate {
  const { matches, goals, trip, pieces, finish, absent, stops } = event.team(team)
  const { median, within, form } = trip!
  const shares = Object.fromEntries(pieces.map((share, k) => [String(k + 1), share]))
  return { matches, goals, trip: { time: { median, within }, form, pieces: shares }, finish, absent, stops }
}

describe('an estimate of an earlier event', () => {
  const plain = eventOf()
  const whole = eventOf({ told: told(1) })

  it('is worth the matches behind it, at the discount that is given for it', () => {
    const { teleop, usual, dispersion } = plain.measures
    const share = (teleop - plain.dataOf('back').departing.mean) / usual
    for (const discount of [1, 0.5, 0.1]) {
      const event = eventOf({ told: told(discount) })
      // Eight matches of 26 pieces by the conjugate rule, each counting so much.
      const n = (8 * discount) / dispersion
      const expected = event.priors.rateModel.mean({ count: 26 * n, exposure: n * share }).mean * share
      expect(event.team('back').attempts.mean).toBeCloseTo(expected, 9)
    }
    const of = (discount: number) => eventOf({ told: told(discount) }).team('back')
    const { attempts, trip, finish, goals } = of(0.5)
    expect(attempts.mean).toBeGreaterThan(plain.team('back').attempts.mean + 2)
    expect(attempts.mean).toBeLessThan(of(1).attempts.mean)
    expect(attempts.ownWeight).toBeLessThan(of(1).attempts.ownWeight)
    for (const [one, other] of [
      [trip!.median, of(1).trip!.median],
      [finish['davit']!, of(1).finish['davit']!],
      [goals['gantry']!.success, of(1).goals['gantry']!.success],
    ] as const)
      expect(one.interval80[1] - one.interval80[0]).toBeGreaterThan(other.interval80[1] - other.interval80[0])
  })

  it('is what the matches themselves would say at the same discount, nearly', () => {
    const shared = { seed: 21, volley: 2 }
    const before = seenOf(all, { ...shared, matches: 9 })
    const own = new EventEstimates({ game, teams: [...before.keys()], seen: before })
    for (const team of ['t1', 't2', 't3']) {
      const matches = before.get(team)!.map((each) => ({ seen: each, steps: 1 }))
      const weighing = { halfLife: Number.POSITIVE_INFINITY, discount: 0.5 }
      const byMatches = eventOf({ earlier: new Map([['back', matches]]), weighing }).team('back')
      const byEstimate = eventOf({ told: new Map([['back', { estimate: pastOf(own, team), discount: 0.5 }]]) }).team(
        'back',
      )
      const without = plain.team('back')
      // What an estimate adds is off by the event's own pull on it: a quarter of what it moves, or of the interval it leaves.
      for (const of of [
        (one: TeamEstimate) => one.attempts,
        (one: TeamEstimate) => one.points,
        (one: TeamEstimate) => one.trip!.median,
        (one: TeamEstimate) => one.finish['davit']!,
      ]) {
        const [told, seen80] = [of(byEstimate).mean, of(byMatches).interval80]
        const far = Math.max(Math.abs(of(byMatches).mean - of(without).mean), seen80[1] - seen80[0])
        expect(Math.abs(told - of(byMatches).mean)).toBeLessThan(0.25 * far)
        const width = of(byEstimate).interval80[1] - of(byEstimate).interval80[0]
        expect(width / (seen80[1] - seen80[0])).toBeGreaterThan(0.75)
        expect(width / (seen80[1] - seen80[0])).toBeLessThan(1.33)
      }
    }
  })

  it('moves everything that it speaks of towards what it says', () => {
    const [without, with_] = [plain.team('back'), whole.team('back')]
    expect([without.neverSeen, with_.neverSeen, with_.matches]).toEqual([true, false, 0])
    const near = (value: number, before: number, said: number) =>
      expect(Math.abs(value - said)).toBeLessThan(0.5 * Math.abs(before - said))
    near(with_.attempts.mean, without.attempts.mean, 26)
    near(with_.goals['gantry']!.success.mean, without.goals['gantry']!.success.mean, 0.4)
    near(with_.trip!.median.mean, without.trip!.median.mean, 8)
    near(with_.finish['davit']!.mean, without.finish['davit']!.mean, 0.9)
    near(with_.pieces[1]!.mean, without.pieces[1]!.mean, 0.6)
    expect(with_.stops.mean).toBeLessThan(without.stops.mean)
  })

  it('says nothing at a discount of 0 or without matches behind it, about nobody', () => {
    const everything = (event: EventEstimates, team: string) => {
      const { attempts, points, trip, finish, goals, pieces } = event.team(team)
      return JSON.stringify({ attempts, points, trip, finish, goals, pieces })
    }
    const empty = eventOf({ told: told(1, { ...past, matches: 0 }) })
    for (const team of ['back', 't3']) {
      expect(everything(eventOf({ told: told(0) }), team)).toBe(everything(plain, team))
      expect(everything(empty, team)).toBe(everything(plain, team))
    }
    expect(empty.team('back').neverSeen).toBe(true)
  })

  it('is cut by a change of the robot and by age', () => {
    const worth = (own: number, era: number, halfLife = Number.POSITIVE_INFINITY) =>
      matchesWorth({ estimate: past, discount: 0.5 }, { own, era, weighing: { halfLife, discount: 0.4 } })
    expect(worth(3, 0)).toBeCloseTo(4, 12)
    expect(worth(3, 1)).toBeCloseTo(1.6, 12)
    expect(worth(3, 2)).toBeCloseTo(0.64, 12)
    // Ages 3 … 10 with a half-life of one match: 0.5 (2^-3 + … + 2^-10).
    expect(worth(3, 0, 1)).toBeCloseTo(0.5 * (2 ** -2 - 2 ** -10), 12)
    const changed = eventOf({ told: told(1), changes: new Map([['back', 1]]) }).team('back').attempts
    expect(changed.mean).toBeLessThan(whole.team('back').attempts.mean)
    expect(changed.mean).toBeGreaterThan(plain.team('back').attempts.mean)
  })
})

/** So many rounds of two matches in which each of 12 robots plays once. */
const robotsOfSeason = truths({ teams: 12, matches: 8, seed: 91 })
function playEvent(event: number, rounds: number) {
  const chance = new Chance(91, event)
  const matches = Array.from({ length: 2 * rounds }, (_, m): Match => {
    const side = (first: number) =>
      robotsOfSeason
        .slice((6 * m + first) % 12, ((6 * m + first) % 12) + 3)
        .map(({ team }) => ({ team, counts: true, state: 'played' as const })) as Side
    return { id: `e${event}m${m}`, phase: 'qualification', number: m + 1, play: 1, red: side(0), blue: side(3) }
  })
  const watched = matches.flatMap((match) =>
    [...match.red, ...match.blue].map(({ team }) => ({
      team,
      observation: record(team, match.id, play(robotsOfSeason.find((each) => each.team === team)!, chance)),
    })),
  )
  return { matches, watched }
}

describe('an earlier event whose matches are at hand', () => {
  const before = playEvent(1, 6)
  const here = { ...playEvent(2, 1), teams: robotsOfSeason.map(({ team }) => team), visits: [], changes: [] }
  const changes = [{ team: 't1', afterMatch: before.matches[4]!.id }]
  const earlier = { matches: before.matches, watched: before.watched, changes, discount: 0.5, changed: ['t2'] }

  it('counts by its discount, and once more by the usual one for each change of the robot since', () => {
    const event = eventEstimates({ ...here, game, earlier })
    const weights = (team: string) => event.weightedOf(team).map((each) => [each.here, each.weight])
    // Six matches there, one here. t0 was never changed; t1 after its third match there; t2 between the two events.
    expect(weights('t0')).toEqual([...Array(6).fill([false, 0.5]), [true, 1]])
    expect(weights('t1')).toEqual([...Array(3).fill([false, 0.5 * 0.4]), ...Array(3).fill([false, 0.5]), [true, 1]])
    expect(weights('t2')).toEqual([...Array(6).fill([false, 0.5 * 0.4]), [true, 1]])
    // A change here cuts everything before it.
    const changed = eventEstimates({ ...here, game, earlier, changes: [{ team: 't0', afterMatch: null }] })
    expect(changed.weightedOf('t0').map(({ weight }) => weight)).toEqual([...Array(6).fill(0.5 * 0.4), 1])
  })

  it('says what it changes: of each team its matches there, what they count, and the numbers with and without', () => {
    const told = earlierChanges({ ...here, game }, earlier)
    expect(told.slice(0, 3).map(({ matches, before: there, worth, changes: n }) => [matches, there, worth, n])).toEqual(
      [
        [1, 6, expect.closeTo(3, 12), 0],
        [1, 6, expect.closeTo(3 * 0.2 + 3 * 0.5, 12), 0],
        [1, 6, expect.closeTo(1.2, 12), 1],
      ],
    )
    const [plain, both] = [estimatesOfEvent({ ...here, game }), estimatesOfEvent({ ...here, game, earlier })]
    for (const [k, { with: together, without }] of told.entries()) {
      expect(without.points).toEqual(plain[k]!.points)
      expect(together.points).toEqual(both[k]!.points)
      expect(together.attempts.ownWeight).toBeGreaterThan(without.attempts.ownWeight)
    }
    // At no discount it is as if there were none.
    const nothing = estimatesOfEvent({ ...here, game, earlier: { ...earlier, discount: 0 } })
    expect(nothing.map(({ attempts }) => attempts.mean)).toEqual(
      plain.map(({ attempts }) => expect.closeTo(attempts.mean, 9)),
    )
  })

  it('names its matches apart from those of this event, and what was believed after each is of this event alone', () => {
    const made = madeOfEvent({ ...here, game, earlier })['t0']!
    expect(made.attempts.matches.map((each) => each.earlier ?? false)).toEqual([...Array(6).fill(true), false])
    expect(made.running.map(({ match }) => match)).toEqual(made.attempts.matches.slice(6).map(({ match }) => match))
    expect(made.running[0]!.mean).toBeCloseTo(estimatesOfEvent({ ...here, game, earlier })[0]!.attempts.mean, 9)
  })
})

/** Events of the same robots, by the address's own answer: what is said after the first goes into the second. */
it('brings a team nearer to what is true than the event alone, after one match of the next event', () => {
  const robots = truths({ teams: 24, matches: 8, seed: 90 })
  const chance = new Chance(90, 2)
  const event = (rounds: number, from: number) => {
    const matches = Array.from({ length: 4 * rounds }, (_, m): Match => {
      const side = (first: number) =>
        robots
          .slice((6 * m + first) % 24, ((6 * m + first) % 24) + 3)
          .map(({ team }) => ({ team, counts: true, state: 'played' as const })) as Side
      return { id: `e${from}m${m}`, phase: 'qualification', number: m + 1, play: 1, red: side(0), blue: side(3) }
    })
    const observations = matches.flatMap((match) =>
      [...match.red, ...match.blue].map(({ team }) =>
        record(team, match.id, play(robots.find((each) => each.team === team)!, chance)),
      ),
    )
    return { game, matches, observations }
  }
  const before = estimateReport(event(8, 1))
  const next = event(1, 2)
  const priors = Object.fromEntries(before.teams.map((estimate) => [estimate.team, { estimate, discount: 0.8 }]))
  const errors = ({ teams }: EstimateReport) =>
    teams.reduce(
      (sum, { team, trip }) => sum + Math.log(trip!.time.median.mean / robots.find((r) => r.team === team)!.trip) ** 2,
      0,
    )
  const [alone, with_] = [errors(estimateReport(next)), errors(estimateReport({ ...next, priors }))]
  expect(with_ / alone).toBeLessThan(0.6)
})
