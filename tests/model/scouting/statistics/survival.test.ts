import { expect, test } from 'vitest'
import { clusteredMean, kaplanMeier } from '../../../../src/model/scouting/statistics/index.ts'
import { allNear, near } from './close.ts'

/** Weeks of remission under 6-mercaptopurine: Freireich et al., Blood 21 (1963), 699–716; + still in remission. */
const remissions = '6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+'.split(' ').map((text) => ({
  seconds: Number.parseInt(text, 10),
  ended: !text.endsWith('+'),
  weight: 1,
}))

// The product-limit estimates that textbooks of survival analysis print for these data (from memory; each is a product of a few
// fractions that can be checked by hand: 18/21, · 16/17, · 14/15, · 11/12, · 10/11, · 6/7, · 5/6).
test('times that were cut off hand their weight on as published', () => {
  const { shares, beyond } = kaplanMeier(remissions)
  let left = 1
  const after = new Map<number, number>()
  for (const [i, { seconds }] of remissions.entries()) {
    left -= shares[i]!
    after.set(seconds, left)
  }
  allNear(
    [6, 7, 10, 13, 16, 22, 23].map((week) => after.get(week)!),
    [0.857, 0.807, 0.753, 0.69, 0.627, 0.538, 0.448],
    6e-4,
  )
  near(beyond, 0.44818, 1e-4)
})

test('without cut-off times shares are the weights', () => {
  const { shares, beyond } = kaplanMeier([3, 1, 1].map((weight, i) => ({ seconds: 9 - i, ended: true, weight })))
  allNear(shares, [0.6, 0.2, 0.2], 1e-12)
  expect(beyond).toBe(0)
})

test('clusters of one size have the standard error of their means, however alike their values are', () => {
  const clusters = [
    [3, 5, 4],
    [8, 6, 7],
    [5, 5, 8],
    [1, 4, 4],
  ]
  const found = clusteredMean(
    clusters.flatMap((values, c) => values.map((value) => ({ value, weight: 2, cluster: `m${c}` }))),
  )!
  const means = clusters.map((values) => values.reduce((sum, x) => sum + x, 0) / values.length)
  const mean = means.reduce((sum, x) => sum + x, 0) / 4
  const error = Math.sqrt(means.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 3 / 4)
  near(found.mean, mean, 1e-12)
  near(found.standardError!, error, 1e-12)
  // Student’s t at 0.975 with 3 degrees of freedom: 3.182 (printed in every table of it; from memory).
  near((found.interval![1] - mean) / error, 3.18245, 1e-5)
})

test('one cluster tells nothing about others', () => {
  const one = [1, 2].map((value) => ({ value, weight: 1, cluster: 'm' }))
  expect(clusteredMean(one)).toEqual({ mean: 1.5, standardError: null, interval: null, clusters: 1 })
  expect(clusteredMean([])).toBeNull()
})
