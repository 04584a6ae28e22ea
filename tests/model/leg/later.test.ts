import { describe, expect, it } from 'vitest'
import type { Duration } from '../../../src/model/documents/types.ts'
import { distributionOf, massOnGrid } from '../../../src/model/duration/index.ts'
import { convolve, later, meanOf, type Pmf, pmf, quantileOf, varianceOf } from '../../../src/model/leg/pmf.ts'

const step = 0.001

/** A normal on the grid, eight standard deviations each way. */
function normal(mean: number, sd: number): Pmf {
  const first = Math.max(0, Math.round((mean - 8 * sd) / step))
  const count = Math.round((mean + 8 * sd) / step) - first + 1
  const mass = Float64Array.from({ length: count }, (_, k) => {
    const z = ((first + k) * step - mean) / sd
    return (Math.exp(-0.5 * z * z) / (sd * Math.sqrt(2 * Math.PI))) * step
  })
  return pmf(first, mass)
}

const mean = (times: Pmf) => meanOf(times) * step
const variance = (times: Pmf) => varianceOf(times) * step ** 2

describe('the later of independent times', () => {
  // Teichroew, Ann. Math. Statist. 27:410-426 (1956); Harter, Biometrika 48:151-165 (1961), table 1; computed with
  // mpmath 1.3.0. 1/sqrt(pi) for two and 3/(2 sqrt(pi)) for three.
  it.each([
    [2, 0.564189583548],
    [3, 0.846284375322],
    [4, 1.029375373],
    [5, 1.16296447364],
    [6, 1.26720636061],
    [8, 1.42360030605],
    [10, 1.53875273084],
  ])('of %d standard normals has the published mean', (count, expected) => {
    const all = Array.from({ length: count }, () => normal(10, 1)).reduce(later)
    // Rounding each to the grid moves no mean that smooth; what is left is the tails that are thinned.
    expect(mean(all) - 10).toBeCloseTo(expected, 5)
  })

  // Clark, Operations Research 9(2):145-162 (1961), eqs. (2)-(4), closed form.
  it('of two alike normals N(5, 1) has mean 5.564189584 and variance 0.6816901138', () => {
    const both = later(normal(8, 1), normal(8, 1))
    expect(mean(both) - 3).toBeCloseTo(5.564189584, 5)
    expect(variance(both)).toBeCloseTo(0.6816901138, 4)
  })

  // The same, for a correlation of 0.3: a stage of variance 0.3 · 4 · 5 = 6 that both wait for, and what is left of each,
  // variances 10 and 19. Every time is 60 s later here, so that none is below 0.
  it('of two normals N(20, 4) and N(18, 5) that share a stage has mean 21.29485355 and variance 14.93020676', () => {
    const shared = normal(30, Math.sqrt(6))
    const branches = later(normal(50, Math.sqrt(10)), normal(48, Math.sqrt(19)))
    const both = convolve(shared, branches)
    expect(mean(both) - 60).toBeCloseTo(21.29485355, 4)
    expect(variance(both)).toBeCloseTo(14.93020676, 3)
  })
})

// Triangles are no kind of Duration, but arise from evenly spread ones. Mean (a + b + c) / 3, variance
// (a² + b² + c² - ab - ac - bc) / 18: Kotz & van Dorp, Beyond Beta (2004) ch. 1; quantiles by scipy 1.17.1 stats.triang.
describe('evenly spread times', () => {
  const even = (from: number, to: number): Pmf => {
    const seconds = Array.from({ length: 20_000 }, (_, i) => from + ((to - from) * (i + 0.5)) / 20_000)
    return massOnGrid(distributionOf({ kind: 'samples', seconds }), step)
  }
  const quantiles = (times: Pmf) => [0.05, 0.25, 0.5, 0.75, 0.95].map((p) => quantileOf(times, p) * step)

  it('one after the other are a triangle: 1, 1.5, 2', () => {
    const sum = convolve(even(0.5, 1), even(0.5, 1))
    expect(mean(sum)).toBeCloseTo(1.5, 6)
    // Sharing between grid points adds a sixth of a squared step for each, thinning the last 2 % as much again.
    expect(variance(sum)).toBeCloseTo(0.04166666667, 5)
    const published = [1.158113883, 1.353553391, 1.5, 1.646446609, 1.841886117]
    for (const [i, value] of quantiles(sum).entries()) expect(Math.abs(value - published[i]!)).toBeLessThanOrEqual(step)
  })

  it('the later of two is the triangle 0, 0, 1 seen from its other end', () => {
    const both = later(even(0, 1), even(0, 1))
    expect(1 - mean(both)).toBeCloseTo(0.3333333333, 3)
    expect(variance(both)).toBeCloseTo(0.05555555556, 4)
    const published = [0.02532056552, 0.1339745962, 0.2928932188, 0.5, 0.7763932023]
    const seen = quantiles(both).map((value) => 1 - value)
    for (const [i, value] of seen.reverse().entries()) expect(Math.abs(value - published[i]!)).toBeLessThanOrEqual(step)
  })

  it('measured times of the triangle 2, 3, 7 have its mean, variance and quantiles', () => {
    // Inverse of the cdf (x - 2)² / 5 up to the mode, 1 - (7 - x)² / 20 above.
    const inverse = (p: number) => (p < 0.2 ? 2 + Math.sqrt(5 * p) : 7 - Math.sqrt(20 * (1 - p)))
    const count = 10_000
    const duration: Duration = {
      kind: 'samples',
      seconds: Array.from({ length: count }, (_, i) => inverse((i + 0.5) / count)),
    }
    const d = distributionOf(duration)
    expect(d.mean).toBeCloseTo(4, 4)
    expect(d.variance).toBeCloseTo(1.166666667, 3)
    const published = [2.5, 3.127016654, 3.83772234, 4.763932023, 6]
    for (const [i, p] of [0.05, 0.25, 0.5, 0.75, 0.95].entries()) expect(d.quantile(p)).toBeCloseTo(published[i]!, 2)
  })
})
