import { describe, expect, test } from 'vitest'
import {
  bootstrap,
  bradleyTerry,
  brier,
  idealError,
  intraclass,
  kappa,
  krippendorff,
  meanOf,
  normalCdf,
  normalCrps,
  normalQuantile,
  normalWin,
  oneSample,
  paired,
  poissonOutcome,
  pooled,
  quantileOf,
  quantilesOf,
  randomisedPit,
  roundRobin,
  sampleCrps,
  shrunk,
  twoSamples,
  welch,
} from '../../../../src/model/scouting/statistics/index.ts'
import { batters, league } from './baseball.ts'
import { allNear, near } from './close.ts'

// Efron & Morris, JASA 70 (1975), 311–319, Table 1; Scientific American 236(5) (1977), 119–127.
test('batting averages are drawn to their mean as published', () => {
  const y = batters.map(([hits]) => hits / 45)
  const root = Math.sqrt(45)
  const x = y.map((share) => root * Math.asin(2 * share - 1))
  const arcsine = shrunk(x, 1)
  near(arcsine.mean, -3.31656, 1e-5)
  near(arcsine.factor, 0.20897, 1e-4)
  allNear(
    arcsine.values.map((z) => (1 + Math.sin(z / root)) / 2),
    batters.map(([, , published]) => published),
    1e-4,
  )
  const mean = meanOf(y)
  const plain = shrunk(y, (mean * (1 - mean)) / 45)
  near(plain.factor, 0.21165, 1e-4)
  allNear(
    plain.values,
    batters.map(([, , , published]) => published),
    1e-4,
  )
  const loss = (values: readonly number[]) => values.reduce((sum, v, i) => sum + (v - batters[i]![1]) ** 2, 0)
  near(loss(y), 0.075317, 1e-3)
  near(loss(y) / loss(plain.values), 3.535, 5e-3)
})

test('quantiles without sorting are those of the sorted values, equal and far-off ones among them', () => {
  const values = Float64Array.from({ length: 1000 }, (_, i) => Math.tan(i * 12.9898) * (i % 7))
  const shares = [0, 0.025, 0.1, 0.5, 0.9, 0.975, 1]
  const sorted = values.toSorted()
  allNear(
    quantilesOf(values, shares),
    shares.map((p) => quantileOf(sorted, p)),
    0,
  )
  allNear(quantilesOf(new Float64Array(9).fill(3), [0.1, 0.9]), [3, 3], 0)
})

describe('agreement', () => {
  // Cohen (1960), the table of N = 200 (cells from memory); the second is widely used as an example.
  test('of two', () => {
    const cohen = kappa([
      [88, 14, 18],
      [10, 40, 10],
      [2, 6, 12],
    ])
    allNear([cohen.observed, cohen.expected, cohen.kappa], [0.7, 0.41, 0.4915254237], 1e-9)
    near(
      kappa([
        [20, 5],
        [10, 15],
      ]).kappa,
      0.4,
      1e-10,
    )
  })

  // Krippendorff (2011), example C (from memory; printed .743, .815, .849, .797).
  test('of several with gaps', () => {
    const observers = ['123321412...', '1233224125.3', '.3332342251.', '12332441251.']
    const columns = Array.from({ length: 12 }, (_, unit) =>
      observers.flatMap((row) => (row[unit] === '.' || row[unit] === undefined ? [] : [Number(row[unit])])),
    )
    const found = (['nominal', 'ordinal', 'interval', 'ratio'] as const).map(
      (scale) => krippendorff(columns, scale) as number,
    )
    allNear(found, [0.74342105, 0.8153875, 0.84910714, 0.79740277], 1e-8)
    expect(krippendorff([[1], [2]], 'nominal')).toBeNull()
  })

  // Shrout & Fleiss (1979), Tables 2 to 4 (data from memory); R psych 2.2.9.
  test('of judges over targets', () => {
    const found = intraclass([
      [9, 2, 5, 8],
      [6, 1, 3, 2],
      [8, 4, 6, 8],
      [7, 1, 2, 6],
      [10, 5, 6, 9],
      [6, 2, 4, 7],
    ])
    const { betweenTargets, withinTargets, betweenJudges, residual, single, mean } = found
    allNear(
      [betweenTargets, withinTargets, betweenJudges, residual],
      [11.2416667, 6.26388889, 32.4861111, 1.01944444],
      1e-7,
    )
    allNear([single.oneWay, single.random, single.fixed], [0.165741768, 0.28976378, 0.714840715], 1e-8)
    allNear([mean.oneWay, mean.random, mean.fixed], [0.442797134, 0.620050548, 0.909315542], 1e-8)
  })
})

const sleep = {
  a: [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0],
  b: [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4],
}

describe('samples compared', () => {
  // Conover, Practical Nonparametric Statistics (3rd ed. 1999), chapter 6; distance and exact chance by R 4.2.2, ks.test. Its
  // asymptotic chances (0.502914291 and 0.400473666) break off after one term of the series; these are both of
  // Kolmogorov's series, which agree to 1e-15.
  test('by the distance of their distributions', () => {
    const plain = twoSamples([1.2, 2.3, 3.1, 4.8, 5.5], [2.0, 3.5, 4.1, 6.2, 7.7, 8.1])
    allNear([plain.distance, plain.exact, plain.asymptotic], [0.5, 0.357142857143, 0.502914033641], 1e-9)
    // With equal values R conditions on them, as this does.
    const tied = twoSamples(sleep.a, sleep.b)
    allNear([tied.distance, tied.exact, tied.asymptotic], [0.4, 0.396826084133, 0.400471036208], 1e-9)
  })

  // Marsaglia, Tsang & Wang (2003): P(D < 0.274) = 0.62847 96154 5658 for n = 10 (from memory).
  test('with a distribution: the chance of the distance is the published one', () => {
    // Of a single value P(D < d) = 2 d − 1 for d ≥ ½.
    near(oneSample([0.75], (x) => x).exact, 1 - (2 * 0.75 - 1), 1e-12)
    near(1 - exactAt(10, 0.274), 0.62847961545658, 1e-8)
  })

  // Student, Biometrika 6 (1908), 1–25; R 4.2.2, t.test.
  test('by their means', () => {
    const row = ({ t, df, p, low, high }: ReturnType<typeof welch>) => [t, df, p, low, high]
    const { a, b } = sleep
    allNear(row(welch(a, b)), [-1.860813467487, 17.776473516178, 0.079394140187, -3.36548323071, 0.20548323071], 1e-8)
    allNear(row(pooled(a, b)), [-1.860813467487, 18, 0.079186714216, -3.363874032288, 0.203874032288], 1e-8)
    allNear(row(paired(a, b)), [-4.062127683382, 9, 0.0028328901974, -2.459885763277, -0.7001142367], 1e-8)
    const one = [12.1, 13.4, 11.8, 15.2, 14.1]
    const other = [10.9, 12.0, 11.1, 12.8, 10.2, 11.7]
    allNear(
      row(welch(one, other)),
      [2.552876243328, 6.640588410259, 0.039673109833, 0.118709190922, 3.621290809078],
      1e-8,
    )
  })
})

/** Chance of a distance of at least d, asked for by values that have it. */
function exactAt(n: number, d: number): number {
  // The smallest value at d, all others evenly above, so that F(x₁) − 0 = d is the largest distance.
  const rest = Array.from({ length: n - 1 }, (_, i) => Math.max(d, (i + 1.5) / n))
  return oneSample([d, ...rest], (x) => x).exact
}

// Agresti (2002), Table 10.10 and 10.6; R BradleyTerry2 1.1.2.
describe('strengths from games', () => {
  const meetings = league.map(([home, away, homeWins, awayWins]) => ({ home, away, homeWins, awayWins }))
  const order = ['Mil', 'Det', 'Tor', 'NY', 'Bos', 'Cle']

  test('are the published ones', () => {
    const { strengths, deviance } = bradleyTerry(meetings, { reference: 'Bal' })
    const values = order.map((name) => strengths.get(name)!)
    allNear(
      values.map(({ value }) => value),
      [1.581355877, 1.436408432, 1.294485124, 1.247617845, 1.107697705, 0.683852769],
      1e-6,
    )
    allNear(
      values.map(({ standardError }) => standardError),
      [0.343255664, 0.339568187, 0.336669093, 0.335860616, 0.333877908, 0.331876399],
      1e-6,
    )
    near(deviance, 44.05346123, 1e-8)
  })

  test('and with what playing at home adds', () => {
    const { strengths, home, deviance } = bradleyTerry(meetings, { reference: 'Bal', home: true })
    allNear(
      order.map((name) => strengths.get(name)!.value),
      [1.619554994, 1.475357214, 1.327110398, 1.281340403, 1.143802653, 0.704694457],
      1e-6,
    )
    allNear([home!.value, home!.standardError, deviance], [0.302260656, 0.130943643, 38.64285214], 1e-6)
  })
})

// Brier (1950), Murphy (1973); exact fractions.
test('scores of forecast chances fall into their parts', () => {
  const found = brier([0.9, 0.9, 0.7, 0.7, 0.7, 0.5, 0.5, 0.3, 0.3, 0.1], [1, 1, 1, 0, 1, 0, 1, 0, 0, 0])
  const { score, reliability, resolution, uncertainty, log } = found
  allNear([score, reliability, resolution, uncertainty, log], [0.138, 8 / 375, 2 / 15, 0.25, 0.433304848817], 1e-12)
})

// Gneiting & Raftery (2007), eq. 21; closed form.
test('a normal forecast of a score', () => {
  const observed = [8, 10, 13.5]
  allNear(
    observed.map((y) => normalCdf((y - 10) / 2)),
    [0.1586552539, 0.5, 0.9599408431],
    1e-9,
  )
  const crps = [1.2048827153, 0.4673899545, 2.4363160102]
  allNear(
    observed.map((y) => normalCrps(y, 10, 2)),
    crps,
    1e-9,
  )
  // A fine sample of the same forecast scores nearly the same.
  const sample = Array.from({ length: 4000 }, (_, i) => 10 + 2 * normalQuantile((i + 0.5) / 4000))
  allNear(
    observed.map((y) => sampleCrps(y, sample)),
    crps,
    1e-3,
  )
  near(randomisedPit(0.2, 0.1, 0.5), 0.25, 1e-12)
})

// Efron & Tibshirani (1993), the mice of the treatment.
test('the bootstrap error of a mean', () => {
  const mice = [94, 197, 16, 38, 99, 141, 23]
  near(idealError(mice), 23.36352344, 1e-9)
  const means = [...bootstrap(mice, meanOf, { replicates: 10_000, seed: 20 })]
  const centre = meanOf(means)
  near(Math.sqrt(meanOf(means.map((m) => (m - centre) ** 2))), 23.36352344, 0.03)
})

describe('games of chance', () => {
  // Skellam (1946), scipy 1.17.1; Thurstone (1927), closed form.
  test('who scores more', () => {
    const { win, tie, loss } = poissonOutcome(2.5, 1.8)
    allNear([win, tie, loss], [0.533978033, 0.1893004913, 0.2767214757], 1e-9)
    near(normalWin({ mean: 105, sd: 18 }, { mean: 96, sd: 22 }), 0.6242336017, 1e-9)
  })

  // All outcomes enumerated in exact fractions by another program.
  test('who finishes where in a round robin', () => {
    const { each, tieForFirst } = roundRobin([
      [0, 3 / 5, 7 / 10, 4 / 5],
      [0, 0, 11 / 20, 13 / 20],
      [0, 0, 0, 3 / 5],
      [0, 0, 0, 0],
    ])
    allNear(each[0]!.ranks, [286337 / 600000, 34531 / 120000, 4579 / 30000, 4119 / 50000], 1e-12)
    allNear(each[1]!.ranks, [38411 / 150000, 17621 / 60000, 30667 / 120000, 38937 / 200000], 1e-12)
    allNear(each[2]!.ranks, [35283 / 200000, 2019 / 8000, 3 / 10, 27121 / 100000], 1e-12)
    allNear(each[3]!.ranks, [5417 / 60000, 9971 / 60000, 35017 / 120000, 18069 / 40000], 1e-12)
    allNear(
      each.map(({ expectedRank }) => expectedRank),
      [368033 / 200000, 477771 / 200000, 533201 / 200000, 124199 / 40000],
      1e-12,
    )
    allNear(each[0]!.wins, [0.024, 0.188, 0.452, 0.336], 1e-12)
    allNear(
      each.map(({ soleFirst }) => soleFirst),
      [42 / 125, 143 / 1000, 81 / 1000, 7 / 250],
      1e-12,
    )
    near(tieForFirst, 103 / 250, 1e-12)
    const even = roundRobin([
      [0, 0.5, 0.5],
      [0, 0, 0.5],
      [0, 0, 0],
    ])
    for (const { ranks, wins, soleFirst } of even.each)
      allNear([...ranks, ...wins, soleFirst], [1 / 3, 1 / 3, 1 / 3, 0.25, 0.5, 0.25, 0.25], 1e-12)
    near(even.tieForFirst, 0.25, 1e-12)
  })
})
