import { describe, expect, test } from 'vitest'
import { Uniforms } from '../../../../src/model/random/index.ts'
import { fieldReport } from '../../../../src/model/scouting/field/index.ts'
import { normalCdf, normalQuantile, oneSample } from '../../../../src/model/scouting/statistics/index.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { driven, game, practice, wholeRobot } from './quay.ts'

const lognormal = (median: number, spread: number) => ({ kind: 'lognormal' as const, median, spread })

/** Runs of a robot that is exactly as its design: each time is drawn from the legs themselves, by this file’s own draws. */
function played(of: { seed: number; runs: number; until: number; form: number; slower?: number }) {
  const { seed, runs, until, form, slower = 1 } = of
  return Array.from({ length: runs }, (_, run) => {
    const draw = new Uniforms(seed, [run])
    const factor = slower * form ** normalQuantile(draw.next())
    const time = (median: number, spread: number) => factor * median * spread ** normalQuantile(draw.next())
    const trips = Array.from({ length: 120 }, () => {
      const raft = draw.next() < 0.6
      const goal = draw.next() < 0.7 ? 'pier' : 'gantry'
      const collecting = raft ? time(4, 1.5) : time(8, 1.3)
      return {
        source: raft ? 'raft' : 'slipway',
        goal,
        collecting,
        scoring: goal === 'pier' ? time(3, 1.4) : time(6, 1.2),
      }
    })
    return practice(driven(trips, until))
  })
}

const robot = (form: number) =>
  wholeRobot(
    { raft: lognormal(4, 1.5), slipway: lognormal(8, 1.3) },
    { pier: lognormal(3, 1.4), gantry: lognormal(6, 1.2) },
    form,
  )

// Marsaglia, Tsang & Wang 2003 by `oneSample`, which is tested against published values.
test('with one leg, form 1 and nothing cut off, distance and chance are those of the classical test', () => {
  const one = wholeRobot({ raft: lognormal(6, 1.4) }, { pier: { kind: 'fixed', seconds: 2 } })
  const draw = new Uniforms(3, [1])
  const times = Array.from({ length: 24 }, () => Math.round(1000 * 6.8 * 1.4 ** normalQuantile(draw.next())) / 1000)
  const until = 21 + times.reduce((sum, time) => sum + time + 2, 0)
  const trips = times.map((collecting) => ({ source: 'raft', goal: 'pier', collecting, scoring: 2 }))
  const { whole, cutOff } = fieldReport({
    game,
    robot: one,
    matches: [],
    observations: [practice(driven(trips, until))],
  })
  expect(cutOff).toBe(0)
  const classical = oneSample(times, (x) => normalCdf(Math.log(x / 6) / Math.log(1.4)))
  // The grid of 0.05 s moves the model's cdf by less than 0.002.
  expect(Math.abs(whole!.distance - classical.distance)).toBeLessThan(0.004)
  // Counted in 999 plays: three standard errors, and what the grid moves; the last trip is cut off in the plays, as in no classical test.
  const error = Math.sqrt((classical.exact * (1 - classical.exact)) / 999)
  expect(Math.abs(whole!.p - classical.exact)).toBeLessThan(3 * error + 0.05)
})

describe('a robot that is as its design', () => {
  const worlds = inLongForm ? 400 : 50
  const found = Array.from({ length: worlds }, (_, seed) => {
    const observations = played({ seed, runs: 8, until: 130, form: 1.15 })
    return fieldReport({ game, robot: robot(1.15), matches: [], observations, plays: 99 }).whole!
  })

  test('has chances of the distance that are spread evenly', () => {
    const { exact } = oneSample(
      found.map(({ p }) => p),
      (p) => p,
    )
    expect(exact).toBeGreaterThan(0.002)
  })

  test('has intervals of the difference that hold nought as often as they say', () => {
    const held = found.filter(({ difference: { interval95 } }) => interval95![0] <= 0 && interval95![1] >= 0).length
    const error = Math.sqrt((0.95 * 0.05) / worlds)
    expect(Math.abs(held / worlds - 0.95)).toBeLessThan(3 * error)
    // No bias: the mean of all differences, in its own standard errors.
    const off = found.map(({ difference }) => difference.mean)
    const mean = off.reduce((sum, x) => sum + x, 0) / worlds
    const sd = Math.sqrt(off.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (worlds - 1))
    expect(Math.abs(mean) / (sd / Math.sqrt(worlds))).toBeLessThan(3)
  })
})

test('a robot a quarter slower is found out, however short the match', () => {
  const whole = (until: number) => {
    const observations = played({ seed: 7, runs: 12, until, form: 1.1, slower: 1.25 })
    return fieldReport({ game, robot: robot(1.1), matches: [], observations, plays: 199 }).whole!
  }
  for (const until of [60, 130, 300]) {
    const { difference, p, model } = whole(until)
    expect(p).toBeLessThan(0.05)
    const [low, high] = difference.interval95!
    expect(low).toBeGreaterThan(0)
    expect(low / model.mean).toBeLessThan(0.25)
    expect(high / model.mean).toBeGreaterThan(0.25)
  }
})
