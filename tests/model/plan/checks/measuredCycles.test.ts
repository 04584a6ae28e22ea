import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { describe, expect, it } from 'vitest'
import type { Duration } from '../../../../src/model/documents/types.ts'
import { atTime, meanOf, releases } from './renewals.ts'

/** Seconds to one unit of the published time, so that the grid is fine against the density. */
const unit = 10

/** Times as somebody would measure them: equally likely, at the middle of each part of the distribution. */
const measured = (quantile: (p: number) => number, count = 4000): Duration => ({
  kind: 'samples',
  seconds: Array.from({ length: count }, (_, i) => unit * quantile((i + 0.5) / count)),
})

const weibull = (shape: number, scale: number) => measured((p) => scale * (-Math.log(1 - p)) ** (1 / shape))

/** Expected renewals by t units. */
const renewals = (duration: Duration, t: number, most: number) =>
  meanOf(atTime((time) => releases(duration, time, most), Math.round(t * unit * 10) / 10))

// Checks 2.4, 2.5 and 2.6b of the list of outside checks. They are no kinds of Duration, but may be measured times.
describe('the expected number of cycles given as measured times', () => {
  // Tijms, A First Course in Stochastic Models (2003), table 8.1.1, p. 312; more digits by mpmath 1.3.0 from the power
  // series of Smith & Leadbetter, Technometrics 5:393-396 (1963).
  it.each([
    [0.4, 0.10865527],
    [0.8, 0.41404889],
    [1.0, 0.60909099],
    [1.5, 1.1237391],
    [2.0, 1.6266732],
    [2.5, 2.1248222],
  ])('is as published for Weibull cycles of mean 1 and squared variation 0.25, t = %d', (t, expected) => {
    expect(renewals(weibull(2.101349094688545, 1.129063389539609), t, 10)).toBeCloseTo(expected, 3)
  })

  it.each([
    [0.5, 0.7785091],
    [1.0, 1.3574565],
    [1.5, 1.9009106],
    [2.5, 2.9466242],
    [3.5, 3.9688777],
    [5.0, 5.4849367],
  ])('is as published for Weibull cycles of mean 1 and squared variation 2, t = %d', (t, expected) => {
    expect(renewals(weibull(0.7209047424490942, 0.8117933510986032), t, 12 + Math.ceil(4 * t))).toBeCloseTo(expected, 3)
  })

  // mpmath 1.3.0, the same series with 120 digits.
  it.each([
    [0.5, 0.2307938936],
    [1, 0.7536912775],
    [2, 1.894039347],
    [3, 3.021745009],
  ])('is that of the power series for Weibull cycles of shape 2, t = %d', (t, expected) => {
    expect(renewals(weibull(2, 1), t, 12)).toBeCloseTo(expected, 3)
  })

  it.each([
    [5, 0.3302698445],
    [20, 1.9455008],
    [40, 4.161428602],
  ])('is that of the power series for Weibull cycles of shape 1.5 and scale 10, t = %d', (t, expected) => {
    expect(renewals(weibull(1.5, 1), t / 10, 14)).toBeCloseTo(expected, 3)
  })

  // Sum of gamma cdfs (Barlow & Proschan 1965), by scipy 1.17.1. A gamma of shape 1/2 and scale 2 is the square of a
  // standard normal.
  it.each([
    [1, 1.424660217],
    [4, 4.494231273],
  ])('is that of gamma cycles of shape 1/2 and scale 2, t = %d', (t, expected) => {
    const duration = measured((p) => normalQuantile((1 + p) / 2, 0, 1) ** 2)
    expect(renewals(duration, t, 16 + 5 * t)).toBeCloseTo(expected, 3)
  })
})
