import { describe, expect, it } from 'vitest'
import type { Duration } from '../../../../src/model/documents/types.ts'
import { distributionOf } from '../../../../src/model/duration/index.ts'
import { plan } from '../../../../src/model/plan/index.ts'
import { erlangAtoms } from './erlang.ts'
import { atTime, type Chances, meanOf, releases } from './renewals.ts'
import { bareRobot, collecting, fixed, optionFor, scoring, smallGame } from './smallGame.ts'

/** Renewals as the plan sees them: collect, score, collect, score. The score leg is the last tenth of each cycle. */
function cycles(lessATenth: Duration, time: number): Chances {
  const game = smallGame({ teleop: time, sources: [{ id: 'source' }], goals: [{ id: 'goal', points: 1 }] })
  const robot = bareRobot({
    collect: { source: collecting(lessATenth) },
    score: { goal: scoring(fixed(0.1)) },
  })
  return new Map(plan(game, optionFor(game, robot)).pieces['goal'])
}

const sum = (terms: number[]) => terms.reduce((total, term) => total + term, 0)

// Section 2 of the list of outside checks; 2.4, 2.5 and 2.6b, whose cycles are given as measured times, stand in
// measuredCycles.test.ts. 2.1's horizon of 150 s is cut to 30 s, where N is Poisson as well.
describe('the number of cycles in a given time', () => {
  // Ross, Stochastic Processes (1996) ch. 3: exponential cycles at rate 0.2 a second make N(30) Poisson with mean 6.
  it('is Poisson for exponential cycles', () => {
    const chances = atTime(
      (time) => releases({ kind: 'samples', seconds: erlangAtoms(2000, { shape: 1, scale: 5 }) }, time, 24),
      30,
    )
    let poisson = Math.exp(-6)
    for (let n = 0; n <= 15; n++) {
      expect(chances.get(n) ?? 0, `P(N = ${n})`).toBeCloseTo(poisson, 3.3)
      poisson *= 6 / (n + 1)
    }
    expect(meanOf(chances)).toBeCloseTo(6, 2)
  })

  // Cox, Renewal Theory (1962) 4.3: m(t) = lam t/2 - 1/4 + exp(-2 lam t)/4.
  it.each([1, 5, 20])('has the closed-form mean for Erlang-2 stages of rate 0.5, t = %d', (t) => {
    const seconds = erlangAtoms(2000, { shape: 2, scale: 2 })
    const mean = meanOf(atTime((time) => releases({ kind: 'samples', seconds }, time, 14), t))
    expect(mean).toBeCloseTo((0.5 * t) / 2 - 1 / 4 + Math.exp(-2 * 0.5 * t) / 4, 3)
  })

  // Feller vol. 2 (1971) XI; Ross, Introduction to Probability Models, 7.1: m(1) = e - 1. One time unit is 10 s here.
  it.each([0.5, 1, 1.5, 2, 3])('has the closed-form mean for uniform cycles, t = %d', (t) => {
    const seconds = Array.from({ length: 1000 }, (_, i) => (i + 0.5) / 100)
    const mean = meanOf(atTime((time) => releases({ kind: 'samples', seconds }, time, 16), t * 10))
    // The slope of m falls by 1 at t = 1, so that there both horizons have to be looked at: half a step each way.
    const half = 0.005
    expect(mean).toBeCloseTo((uniformRenewals(t - half) + uniformRenewals(t + half)) / 2, 4)
    expect(uniformRenewals(1)).toBeCloseTo(Math.E - 1, 12)
  })

  // m(t) = sum of gamma cdfs (Barlow & Proschan 1965), by scipy 1.17.1.
  it.each([
    [5, 0.1439746236],
    [10, 0.6185836274],
    [20, 1.625070785],
    [135, 13.125],
  ])('has the mean of gamma cycles of shape 4 and scale 2.5, t = %d s', (t, expected) => {
    const seconds = erlangAtoms(2000, { shape: 4, scale: 2.5 })
    expect(meanOf(atTime((time) => releases({ kind: 'samples', seconds }, time, 26), t))).toBeCloseTo(expected, 3)
  })

  // Xie, Comm. Statist. Simul. 18:281-293 (1989), Richardson-extrapolated.
  it.each([
    [5, 0.059114747],
    [10, 0.89815398],
    [20, 2.1454463],
    [40, 4.7795629],
  ])('has the mean of lognormal cycles with ln-mean 2 and ln-sd 0.25, t = %d', (t, expected) => {
    const duration: Duration = { kind: 'lognormal', median: Math.exp(2), spread: Math.exp(0.25) }
    expect(meanOf(atTime((time) => releases(duration, time, 10), t))).toBeCloseTo(expected, 3)
  })

  // One time unit is 4 s here, so that the grid is fine enough for the steep density.
  it.each([
    [1, 0.62640331],
    [2, 1.3194317],
    [5, 3.2572661],
  ])('has the mean of lognormal cycles with ln-mean 0 and ln-sd 1, t = %d', (t, expected) => {
    // By its quantiles: what lies beyond the horizon does not matter, and the far tail of 16 draws is long.
    const { quantile } = distributionOf({ kind: 'lognormal', median: 4, spread: Math.E })
    const seconds = Array.from({ length: 4000 }, (_, i) => quantile((i + 0.5) / 4000))
    const duration: Duration = { kind: 'samples', seconds }
    expect(meanOf(atTime((time) => releases(duration, time, 16), t * 4))).toBeCloseTo(expected, 3)
  })

  // Cox (1962) ch. 3, computed by scipy 1.17.1: gamma cycles of shape 9 and mean 12 s in 135 s.
  const published = [
    9.8857399e-8, 1.8117576e-5, 0.00093277836, 0.015960521, 0.10317509, 0.27815962, 0.33783622, 0.19657867, 0.057651913,
    0.0088990826, 0.00075102341, 3.5853466e-5,
  ]
  it('is distributed as published for gamma cycles made of a collect and a score leg', () => {
    // The least of the atoms is above a tenth, so that the score leg's tenth can be taken from each.
    const seconds = erlangAtoms(2000, { shape: 9, scale: 12 / 9 }).map((atom) => atom - 0.1)
    const chances = atTime((time) => cycles({ kind: 'samples', seconds }, time), 135)
    published.forEach((chance, i) => {
      expect(chances.get(i + 5) ?? 0, `P(N = ${i + 5})`).toBeCloseTo(chance, 4)
    })
    const mean = meanOf(chances)
    expect(mean).toBeCloseTo(10.80555556, 3)
    expect(sum([...chances].map(([n, p]) => p * (n - mean) ** 2))).toBeCloseTo(1.3323045, 3)
  })

  // Smith, Proc. R. Soc. Edinburgh A 64 (1954): m(t) = t/mu + (s^2 - mu^2) / (2 mu^2) + o(1) = 10.78125 here.
  it('approaches the second-order asymptote for lognormal cycles of 12 s, sd 3 s, in 135 s', () => {
    // The lognormal part is the cycle without the score leg's tenth.
    const logVariance = Math.log(1 + (3 / 11.9) ** 2)
    const duration: Duration = {
      kind: 'lognormal',
      median: 11.9 * Math.exp(-logVariance / 2),
      spread: Math.exp(Math.sqrt(logVariance)),
    }
    expect(meanOf(atTime((time) => cycles(duration, time), 135))).toBeCloseTo(10.78125, 3)
  })

  // By definition; a cycle that ends at the buzzer counts. 9.999 s of the list is 9.9 s here: clocks are in tenths.
  it.each([
    [12, 135, 11],
    [0.1, 0.3, 3],
    [7.5, 150, 20],
    [10, 9.9, 0],
    [10, 10, 1],
  ])('is exact for cycles of %d s in %d s', (cycle, time, count) => {
    expect(releases(fixed(cycle), time, 24).get(count)).toBeCloseTo(1, 9)
    if (cycle > 0.1) expect(cycles(fixed(cycle - 0.1), time).get(count)).toBeCloseTo(1, 9)
  })
})

/** Sum over k <= t of (-1)^k (t - k)^k e^(t - k) / k!, less 1. */
function uniformRenewals(t: number): number {
  let factorial = 1
  const terms = Array.from({ length: Math.floor(t) + 1 }, (_, k) => {
    factorial *= Math.max(k, 1)
    return ((k - t) ** k * Math.exp(t - k)) / factorial
  })
  return sum(terms) - 1
}
