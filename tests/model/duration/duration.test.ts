import { describe, expect, it } from 'vitest'
import type { Duration } from '../../../src/model/documents/types.ts'
import { distributionOf, massOnGrid } from '../../../src/model/duration/index.ts'
import { meanOf, varianceOf } from '../../../src/model/leg/pmf.ts'

const range = (low: number, likely: number, high: number): Duration => ({ kind: 'range', low, likely, high })

// Beta-PERT with lambda 4: Malcolm, Roseboom, Clark & Fazar, Operations Research 7(5):646-669 (1959) for the mean; exact
// variance (mean - low)(high - mean) / 7 and quantiles computed with scipy 1.17.1 stats.beta. The 1959 variance
// ((high - low) / 6)^2 would be 0.694, 1.778 and 1 here.
describe('a range is a beta-PERT with weight 4', () => {
  it.each([
    [2, 3, 7, 3.5, 0.75, [2.294886938, 2.817157488, 3.383361297, 4.071133135, 5.10638362], 0.3315818618],
    [1, 2, 9, 3, 1.714285714, [1.291578144, 1.961184389, 2.768959159, 3.81814532, 5.502756884], 0.2625120453],
    [2, 2, 8, 3, 0.7142857143, [2.06123731, 2.335474932, 2.77669662, 3.4528503, 4.70431837], 0],
  ] as const)('between %d and %d and %d', (low, likely, high, mean, variance, quantiles, below) => {
    const d = distributionOf(range(low, likely, high))
    expect(d.mean).toBeCloseTo(mean, 8)
    expect(d.variance).toBeCloseTo(variance, 8)
    for (const [i, p] of [0.05, 0.25, 0.5, 0.75, 0.95].entries()) {
      expect(Math.abs(d.quantile(p) / quantiles[i]! - 1)).toBeLessThan(1e-8)
      expect(d.cdf(quantiles[i]!)).toBeCloseTo(p, 7)
    }
    expect(d.cdf(likely)).toBeCloseTo(below, 8)
  })

  it('is a point mass where low is high', () => {
    const d = distributionOf(range(3, 3, 3))
    expect([d.mean, d.variance, d.quantile(0.5), d.cdf(2.999), d.cdf(3)]).toEqual([3, 0, 3, 0, 1])
  })
})

// Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1 (1994), ch. 14: mean, variance and the 84.13 %
// point of a log-normal, in closed form.
it('a log-normal has its median, and its geometric standard deviation one normal deviation above', () => {
  const d = distributionOf({ kind: 'lognormal', median: 4, spread: 1.25 })
  const sigma = Math.log(1.25)
  expect(d.quantile(0.5)).toBeCloseTo(4, 9)
  expect(d.quantile(0.8413447460685429)).toBeCloseTo(5, 8)
  expect(d.mean).toBeCloseTo(4 * Math.exp(sigma ** 2 / 2), 12)
  expect(d.variance).toBeCloseTo(16 * Math.exp(sigma ** 2) * (Math.exp(sigma ** 2) - 1), 9)
  expect(distributionOf({ kind: 'lognormal', median: 4, spread: 1 }).variance).toBe(0)
})

it('samples are atoms: the variance divides by n, a quantile is the inverse of the cdf', () => {
  const d = distributionOf({ kind: 'samples', seconds: [3, 1, 2, 6] })
  expect([d.mean, d.variance]).toEqual([3, 3.5])
  expect([0.25, 0.26, 0.5, 0.75, 0.76].map((p) => d.quantile(p))).toEqual([1, 2, 2, 3, 6])
  expect([0.99, 1, 2.5, 6].map((x) => d.cdf(x))).toEqual([0, 0.25, 0.5, 1])
})

describe('a duration on the grid', () => {
  const durations: Duration[] = [
    { kind: 'fixed', seconds: 1.234 },
    range(0.7, 1.1, 2.4),
    range(1, 1, 1.5),
    { kind: 'lognormal', median: 1.8, spread: 1.2 },
    { kind: 'samples', seconds: [0.9, 1.03, 1.1, 3.127] },
  ]
  it.each(durations)('keeps mean and, but for sharing, variance: %j', (duration) => {
    const step = 0.01
    const d = distributionOf(duration)
    const mass = massOnGrid(d, step)
    expect(meanOf(mass) * step).toBeCloseTo(d.mean, 6)
    // Sharing a mass between two neighbours adds at most a quarter of a squared step.
    const added = varianceOf(mass) * step ** 2 - d.variance
    expect(added).toBeGreaterThan(-1e-6)
    expect(added).toBeLessThan(step ** 2 / 4 + 5e-5)
    expect(mass.mass.reduce((sum, m) => sum + m, 0)).toBeCloseTo(1, 12)
  })
})
