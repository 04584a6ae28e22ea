import { describe, expect, it } from 'vitest'
import { Chances } from '../../../../src/model/scouting/estimates/chances.ts'
import { cutOff } from '../../../../src/model/scouting/estimates/cutOff.ts'
import { departures } from '../../../../src/model/scouting/estimates/departure.ts'
import { countDispersion, shareDispersion } from '../../../../src/model/scouting/estimates/dispersion.ts'
import { binomialOf, countOf, Named } from '../../../../src/model/scouting/estimates/pool.ts'
import { Rates } from '../../../../src/model/scouting/estimates/rates.ts'
import { hyperpriors } from '../../../../src/model/scouting/estimates/settings.ts'
import { Shares } from '../../../../src/model/scouting/estimates/shares.ts'
import { Trips } from '../../../../src/model/scouting/estimates/trips.ts'
import type { Weighted } from '../../../../src/model/scouting/estimates/weights.ts'
import { normalCdf } from '../../../../src/model/scouting/statistics/index.ts'
import { near } from '../statistics/close.ts'

const moments = (values: readonly number[]) => {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length
  return { mean, sd: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length) }
}
const levels = Array.from({ length: 4000 }, (_, i) => (i + 0.5) / 4000)

// The integrals over the same hyperpriors by an independent program (Python, scipy 1.17.1, product grids of 1,601 × 1,801 and
// 1,201 × 1,401 points over all of what matters).
describe('hyperparameters on a grid', () => {
  it('give the expected rates that a fine integration gives', () => {
    const teams = [
      [4, 1, 3.5317432, 0.4307963],
      [12, 3, 3.6938857, 0.6525755],
      [7, 2, 3.3455259, 0.5727656],
      [0, 1, 1.808558, 0.4307963],
    ] as const
    const rates = new Rates(teams.map(([count, exposure]) => ({ count, exposure })))
    for (const [count, exposure, expected, weight] of teams) {
      const { mean, ownWeight } = rates.mean({ count, exposure })
      near(mean, expected, 4e-3)
      near(ownWeight, weight, 4e-3)
    }
  })

  it('give the chances that a fine integration gives', () => {
    const teams = [
      [8, 2, 0.7258134, 0.1114014],
      [3, 5, 0.5205336, 0.1445589],
      [0, 1, 0.5589855, 0.2012349],
      [12, 3, 0.7390662, 0.0973423],
    ] as const
    const chances = new Chances(
      teams.map(([hits, misses]) => ({ hits, misses })),
      hyperpriors.success,
    )
    for (const [hits, misses, mean, sd] of teams) {
      // Mean and second moment of the Beta at each level of the grid's distribution.
      const each = levels.map((u) => {
        const { a, b } = chances.prior(u)
        const n = a + b + hits + misses
        return { p: (a + hits) / n, square: ((a + hits) * (a + hits + 1)) / (n * (n + 1)) }
      })
      const found = moments(each.map(({ p }) => p)).mean
      near(found, mean, 5e-3)
      near(Math.sqrt(moments(each.map(({ square }) => square)).mean - found ** 2), sd, 1e-2)
    }
  })

  it('narrow to where the data put them, however many there are', () => {
    // 400 teams of one rate: no more spread than the grid lets there be, the mean within a hundredth.
    const rates = new Rates(Array.from({ length: 400 }, (_, k) => ({ count: 48 + (k % 5), exposure: 10 })))
    near(moments(levels.map((u) => rates.prior(u).shape / rates.prior(u).rate)).mean, 5, 0.01)
  })
})

describe('a trip that was cut off', () => {
  it('counts as what leaves the belief with the moments and the evidence of the exact answer', () => {
    const [c, within, belief] = [Math.log(15), 0.3 ** 2, { mean: Math.log(12), variance: 0.4 ** 2 }]
    const site = cutOff(c, within, belief)
    // By Simpson's rule on 4,000 steps over 16 standard deviations.
    const steps = 4000
    const sums = { zero: 0, one: 0, two: 0, site: 0 }
    for (let k = 0; k <= steps; k++) {
      const z = -8 + (16 * k) / steps
      const m = belief.mean + 0.4 * z
      const weight = (k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2) * (16 / steps / 3)
      const density = (weight * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI)
      const exact = density * normalCdf((m - c) / 0.3)
      sums.zero += exact
      sums.one += exact * m
      sums.two += exact * m * m
      sums.site += density * Math.exp(site.log - 0.5 * site.precision * (m - site.mean) ** 2)
    }
    near(sums.site, sums.zero, 1e-9)
    const precision = 1 / belief.variance + site.precision
    const mean = (belief.mean / belief.variance + site.precision * site.mean) / precision
    near(mean, sums.one / sums.zero, 1e-9)
    near(1 / precision, sums.two / sums.zero - (sums.one / sums.zero) ** 2, 1e-6)
  })

  it('says nothing where it was cut off at once', () => {
    const { log, precision } = cutOff(Math.log(0.5), 0.09, { mean: Math.log(12), variance: 0.16 })
    expect(precision).toBeLessThan(1e-6)
    expect(Math.abs(log)).toBeLessThan(1e-6)
  })
})

const matchOf = (ended: readonly number[], cut: readonly number[]) => {
  const logs = ended.map(Math.log)
  const mean = logs.length > 0 ? logs.reduce((sum, x) => sum + x, 0) / logs.length : 0
  const squares = logs.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  return {
    weight: 1,
    count: logs.length,
    mean,
    squares,
    cut: cut.map((seconds) => ({ at: Math.log(seconds), weight: 1 })),
  }
}

// Integrated by brute force by an independent program (Python, numpy): match means, team means and level by quadrature,
// spreads on a grid of 45 × 25 × 33, cut-off trips exactly.
describe('times of trips', () => {
  const seen: [number[], number[]][][] = [
    [
      [[10, 12, 9], [6]],
      [[14, 11], [9]],
    ],
    [[[20, 25, 18], [12]]],
    [
      [[8, 9, 7, 11], [3]],
      [[], [25]],
    ],
  ]
  const expectedOf = (cuts: boolean) => {
    const teams = seen.map((team) => team.map(([ended, cut]) => matchOf(ended, cuts ? cut : [])))
    const trips = new Trips(teams.map((team) => team.filter(({ count, cut }) => count > 0 || cut.length > 0)))
    // The level's own spread by the middles of 15 equal parts of a normal.
    const priors = levels.filter((_, i) => i % 4 === 0).map((u, i) => trips.prior(u, normals[i % normals.length]!))
    return {
      spreads: (['within', 'form', 'between'] as const).map((name) => moments(priors.map((each) => each[name])).mean),
      medians: teams.map(
        (team) =>
          moments(
            priors.map((prior) => {
              const own = trips.own(
                team.filter(({ count, cut }) => count > 0 || cut.length > 0),
                prior,
              )
              const before = 1 / prior.between ** 2
              const precision = before + own.precision
              const mean = (before * prior.level + own.precision * own.mean) / precision
              return Math.exp(mean + 0.5 / precision)
            }),
          ).mean,
      ),
    }
  }
  const normals = Array.from({ length: 15 }, (_, i) => {
    const u = (((i * 7) % 15) + 0.5) / 15
    // Bisection on the distribution function.
    let [low, high] = [-6, 6]
    for (let turn = 0; turn < 60; turn++) {
      const middle = (low + high) / 2
      if (normalCdf(middle) < u) low = middle
      else high = middle
    }
    return low
  })

  it('are those of a brute-force integration', () => {
    const { spreads, medians } = expectedOf(false)
    for (const [k, expected] of [0.20198, 0.15849, 0.38844].entries()) near(spreads[k]!, expected, 0.03)
    for (const [k, expected] of [11.55499, 18.25563, 9.77623].entries()) near(medians[k]!, expected, 0.01)
  })

  it('are nearly so with trips that were cut off, of which one match has nothing else', () => {
    // What a cut-off trip says is taken for a normal factor: off by some per cent in so small an event.
    const { spreads, medians } = expectedOf(true)
    for (const [k, expected] of [0.21639, 0.34605, 0.2856].entries()) near(spreads[k]!, expected, 0.05)
    for (const [k, expected] of [13.28208, 17.14798, 15.02348].entries()) near(medians[k]!, expected, 0.04)
    // Left out, they would make the last team nearly twice as quick.
    expect(expectedOf(false).medians[2]).toBeLessThan(0.7 * medians[2]!)
  })
})

describe('dispersion', () => {
  it('of counts is their variance over their mean, and 1 where few were seen', () => {
    const group = [3, 5, 7].map((count) => ({ count, exposure: 1 }))
    expect(countDispersion([group])).toBe(1)
    // Squares (4 + 0 + 4) / 5 on 2 degrees of freedom, in every one of 20 teams.
    near(countDispersion(Array.from({ length: 20 }, () => group)), 0.8, 1e-12)
    const even = [5, 5, 5].map((count) => ({ count, exposure: 1 }))
    expect(countDispersion(Array.from({ length: 20 }, () => even))).toBe(0.05)
  })

  it('of counts knows that half a match holds half as much', () => {
    const group = [2, 4].map((count) => ({ count, exposure: count / 4 }))
    expect(countDispersion(Array.from({ length: 40 }, () => group))).toBe(0.05)
  })

  it('of shares is at least 1, and what strategies add to chance', () => {
    const even = Array.from({ length: 20 }, () => [Float64Array.of(5, 5), Float64Array.of(5, 5), Float64Array.of(5, 5)])
    expect(shareDispersion(even)).toBe(1)
    // All to one goal or all to the other: each count of 10 is 5 off its 5, squares 4 · 25 / 5 on 1 degree of freedom.
    const turned = Array.from({ length: 40 }, () => [Float64Array.of(10, 0), Float64Array.of(0, 10)])
    expect(shareDispersion(turned)).toBe(8)
    const half = Array.from({ length: 40 }, () => [Float64Array.of(7, 3), Float64Array.of(3, 7)])
    near(shareDispersion(half), 3.2, 1e-12)
  })
})

describe('random numbers by name', () => {
  it('have the moments of a Gamma and are the same each time', () => {
    for (const shape of [0.3, 1, 7.5]) {
      const named = new Named(`gamma ${shape}`)
      const drawn = Array.from({ length: 1024 }, (_, d) => named.gamma(d, shape))
      const { mean, sd } = moments(drawn)
      // Four standard errors of 1,024 draws.
      expect(Math.abs(mean - shape)).toBeLessThan(4 * Math.sqrt(shape / 1024))
      expect(Math.abs(sd / Math.sqrt(shape) - 1)).toBeLessThan(4 * Math.sqrt((2 + 6 / shape) / 4 / 1024))
      expect(new Named(`gamma ${shape}`).gamma(17, shape)).toBe(drawn[17])
      // Many at once are the same numbers.
      const shapes = new Float64Array(1024).fill(0.75 * shape)
      expect([...named.gammas(shapes, 0.25 * shape)]).toEqual(drawn)
    }
  })

  it('give counts with the mean and the dispersion asked for', () => {
    for (const [mean, dispersion] of [
      [12, 0.3],
      [4, 1],
      [10, 2.5],
    ] as const) {
      const [mixing, u] = [new Named(`mixing ${mean}`), new Named(`u ${mean}`)]
      const drawn = Array.from({ length: 1024 }, (_, d) =>
        countOf(mean, dispersion, { mixing, u: u.uniform(d), draw: d }),
      )
      const found = moments(drawn)
      expect(Math.abs(found.mean - mean)).toBeLessThan(4 * Math.sqrt((mean * dispersion) / 1024))
      near(found.sd ** 2 / mean, dispersion, 0.25)
    }
    expect([binomialOf(5, 1, 0.3), binomialOf(5, 0, 0.3), binomialOf(1, 0.4, 0.61)]).toEqual([5, 0, 1])
  })
})

describe('shares', () => {
  it('of a team that was seen often are its own, of one that was not the event’s', () => {
    const counts = [Float64Array.of(90, 10), Float64Array.of(10, 90), Float64Array.of(50, 50)]
    const shares = new Shares(2, counts, hyperpriors.goals)
    const named = [new Named('shares a'), new Named('shares b')]
    const drawn = levels.slice(0, 1024).map((_, d) => shares.prior((d + 0.5) / 1024, named, d))
    const share = moments(drawn.map((alpha) => alpha[0]! / (alpha[0]! + alpha[1]!)))
    // About a half, and wide: three teams say little about all.
    expect(Math.abs(share.mean - 0.5)).toBeLessThan(0.05)
    expect(share.sd).toBeGreaterThan(0.08)
    const own = moments(drawn.map((alpha) => (alpha[0]! + 90) / (alpha[0]! + alpha[1]! + 100)))
    expect(Math.abs(own.mean - 0.89)).toBeLessThan(0.02)
  })
})

describe('usual departures', () => {
  const departing = (departed: number | 'never' | 'unknown'): Weighted =>
    ({ seen: { teleop: { departed } }, weight: 1, steps: 0, here: true }) as unknown as Weighted

  it('are the team’s own where it is regular, drawn to the event’s where it was seen once', () => {
    const teams = [
      [20, 21, 19, 20],
      [10, 11, 9, 10],
      [15, 16, 14, 15],
    ].map((own) => own.map(departing))
    const [first, , , once, never] = departures([...teams, [departing(30)], []], 30)
    near(first!.mean, 20, 0.01)
    expect(once!.mean).toBeGreaterThan(28)
    expect(once!.mean).toBeLessThan(30)
    near(never!.mean, (20 + 10 + 15 + 30) / 4, 1e-9)
  })

  it('are half of the endgame where nobody timed one, and none where nobody departs', () => {
    expect(departures([[departing('unknown')]], 30)[0]!.mean).toBe(15)
    expect(departures([[departing('never')], []], 30).map(({ mean }) => mean)).toEqual([0, 0])
  })
})
