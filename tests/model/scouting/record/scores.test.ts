import { expect, test } from 'vitest'
import { Uniforms } from '../../../../src/model/random/index.ts'
import { consistencyBand } from '../../../../src/model/scouting/record/band.ts'
import { outcomeOf } from '../../../../src/model/scouting/record/baselines.ts'
import { decompose, fromBothSides, poolAdjacentViolators } from '../../../../src/model/scouting/record/calibration.ts'
import { callsOf, successes } from '../../../../src/model/scouting/record/calls.ts'
import { coverageOf } from '../../../../src/model/scouting/record/coverage.ts'
import { histogramCrps, placeIn, quantileIn } from '../../../../src/model/scouting/record/histogram.ts'
import { baselinesFor, centralInterval, histogramOf } from '../../../../src/model/scouting/record/index.ts'
import { pitHistogram } from '../../../../src/model/scouting/record/pit.ts'
import { rankedProbabilityScore } from '../../../../src/model/scouting/record/scores.ts'
import { normalWin, sampleCrps } from '../../../../src/model/scouting/statistics/index.ts'
import { idOf, match, result } from './forecasts.ts'

test('Neighbours that fall are pooled: examples of scikit-learn’s tests (tests/test_isotonic.py)', () => {
  expect([...poolAdjacentViolators([3, 7, 5, 9, 8, 7, 10])]).toEqual([3, 6, 6, 8, 8, 8, 10])
  expect([...poolAdjacentViolators([10, 0, 2])]).toEqual([4, 4, 4])
  // With weights, by hand: (3 · 5 + 1 · 1) / 4.
  expect([...poolAdjacentViolators([5, 1, 6], [3, 1, 1])]).toEqual([4, 4, 6])
})

test('Where shares rise with the forecasts the parts are Murphy’s, exact by fractions; elsewhere those worked by hand', () => {
  const chances = [0.9, 0.9, 0.7, 0.7, 0.7, 0.5, 0.5, 0.3, 0.3, 0.1]
  const outcomes = [1, 1, 1, 0, 1, 0, 1, 0, 0, 0]
  const murphy = decompose(chances.map((forecast, i) => ({ forecast, came: outcomes[i]! })))
  expect(murphy.score).toBeCloseTo(69 / 500, 12)
  expect(murphy.miscalibration).toBeCloseTo(8 / 375, 12)
  expect(murphy.discrimination).toBeCloseTo(2 / 15, 12)
  expect(murphy.uncertainty).toBeCloseTo(1 / 4, 12)
  // Fitted 0, ½, ½, 1: the score is 0.2, of the fit 0.125, of one chance for all 0.25.
  const hand = decompose([0, 1, 0, 1].map((came, i) => ({ forecast: 0.2 + 0.2 * i, came })))
  expect(hand.curve.map(({ came }) => came)).toEqual([0, 0.5, 0.5, 1])
  expect(hand.miscalibration).toBeCloseTo(0.075, 12)
  expect(hand.discrimination).toBeCloseTo(0.125, 12)
})

test('The parts add up, none is below 0, and seen from both sides the colours make no difference', () => {
  const uniforms = new Uniforms(7)
  const pairs = Array.from({ length: 60 }, () => {
    const u = uniforms.next()
    return { forecast: Math.round(uniforms.next() * 20) / 20, came: u < 0.1 ? 0.5 : u < 0.5 ? 1 : 0 }
  })
  const turned = pairs.map((pair, i) => (i % 3 === 0 ? { forecast: 1 - pair.forecast, came: 1 - pair.came } : pair))
  for (const of of [pairs, fromBothSides(pairs)]) {
    const { score, miscalibration, discrimination, uncertainty } = decompose(of)
    expect(miscalibration - discrimination + uncertainty).toBeCloseTo(score, 12)
    expect(Math.min(miscalibration, discrimination)).toBeGreaterThanOrEqual(0)
  }
  const [one, other] = [decompose(fromBothSides(pairs)), decompose(fromBothSides(turned))]
  expect(other.miscalibration).toBeCloseTo(one.miscalibration, 12)
  expect(other.discrimination).toBeCloseTo(one.discrimination, 12)
  expect(decompose(turned).discrimination).not.toBeCloseTo(decompose(pairs).discrimination, 3)
})

test('Ranked probability scores are those of Constantinou & Fenton (2012), table of examples, as penaltyblog’s documentation prints them', () => {
  const printed: [number, number, number, 1 | 0 | -1, number][] = [
    [1, 0, 0, 1, 0],
    [0.9, 0.1, 0, 1, 0.005],
    [0.8, 0.1, 0.1, 1, 0.025],
    [0.5, 0.25, 0.25, 1, 0.1562],
    [0.35, 0.3, 0.35, 0, 0.1225],
    [0.6, 0.3, 0.1, 0, 0.185],
    [0.6, 0.25, 0.15, 1, 0.0913],
    [0.6, 0.15, 0.25, 1, 0.1113],
    [0.57, 0.33, 0.1, 1, 0.0975],
    [0.6, 0.2, 0.2, 1, 0.1],
  ]
  // Printed to four digits, some of them rounded down at a half.
  for (const [win, , loss, came, value] of printed)
    expect(Math.abs(rankedProbabilityScore({ win, loss }, came) - value)).toBeLessThanOrEqual(5.0001e-5)
})

test('A score’s distance is that of the sample that the histogram counts, and quantiles are whole matches', () => {
  const histogram = { first: 38, counts: [1, 0, 3, 2, 0, 0, 4] }
  const sample = histogram.counts.flatMap((n, k) => Array<number>(n).fill(histogram.first + k))
  for (const observed of [30, 38, 40.5, 44, 51])
    expect(histogramCrps(histogram, observed)).toBeCloseTo(sampleCrps(observed, sample), 12)
  expect([0.05, 0.1, 0.11, 0.4, 0.6, 0.61, 1].map((p) => quantileIn(histogram, p))).toEqual([
    38, 38, 40, 40, 41, 44, 44,
  ])
  expect(placeIn(histogram, 40)).toEqual({ below: 0.1, equal: 0.3 })
  expect(placeIn(histogram, 60)).toEqual({ below: 1, equal: 0 })
  // The middle half: 40 to 44, which nine of ten matches are in.
  expect(centralInterval(histogram, 0.5)).toEqual({ low: 40, high: 44, mass: 0.9 })
  const distribution = sample.map((points) => [points, 0.1] as [number, number])
  expect(
    histogramOf(
      [...new Map(distribution)].map(([points]) => [points, 0.1 * sample.filter((x) => x === points).length]),
      10,
    ),
  ).toEqual(histogram)
})

test('Coverage counts scores inside, and what whole points give beyond the level is expected', () => {
  const even = { first: 40, counts: Array<number>(10).fill(1) }
  const both = (red: number, blue: number) => [red, blue].map((observed) => ({ forecast: even, observed }))
  // The middle 80 %: 40 would leave out nothing below, so 41 to 49 hold 9 … by the quantiles 0.1 and 0.9: 40 to 48.
  const told = coverageOf([both(40, 48), both(39, 49), both(44, 45), both(41, 60), both(42, 43)], 0.8)
  expect(told).toMatchObject({ scores: 10, inside: 7 })
  expect(told.expected).toBeCloseTo(9, 12)
  // Matches are inside by 1, 0, 1, ½, 1, all 0.9 expected: −0.2 ± t(4) · 0.4472 / √5, by hand.
  expect(told.off![0]).toBeCloseTo(-0.2 - 2.7764451 * 0.2, 6)
  expect(coverageOf([both(40, 48)], 0.8).off).toBeNull()
})

test('Of independent calls the number that comes true is told exactly', () => {
  const even = successes([0.3, 0.3, 0.3, 0.3])
  // Binomial: 0.7⁴, 4 · 0.3 · 0.7³, 6 · 0.3² · 0.7², …
  const binomial = [0.2401, 0.4116, 0.2646, 0.0756, 0.0081]
  for (const [k, p] of even.entries()) expect(p).toBeCloseTo(binomial[k]!, 12)
  // By hand: 0.9 · 0.8 = 0.72 both, 0.1 · 0.2 = 0.02 none.
  expect([...successes([0.9, 0.8])].map((p) => Number(p.toFixed(12)))).toEqual([0.02, 0.26, 0.72])
  const calls = [0.95, 0.9, 0.8, 0.7, 0.6].map((chance, i) => ({ chance, won: i !== 1 }))
  expect(callsOf(calls, 0.7)).toMatchObject({ called: 4, came: 3, low: 2, high: 4 })
  expect(callsOf(calls, 0.7).expected).toBeCloseTo(3.35, 12)
  expect(callsOf(calls, 0.99)).toMatchObject({ called: 0, came: 0, expected: 0, low: 0, high: 0 })
})

test('Baselines are those worked by hand, and say nothing of few totals', () => {
  const matches = [1, 2, 3, 4, 5, 6].map((n) => match(n))
  const results = [50, 60, 55, 45, 70].map((red, i) => result(`q${i + 1}`, i, [red, 40]).result)
  expect(baselinesFor(matches[5]!, matches, results.slice(0, 2))).toEqual({ event: null, teams: null })
  const { event, teams } = baselinesFor(matches[5]!, matches, results)
  // Ten totals: mean 48, squares about it 4 + 144 + 49 + 9 + 484 + 5 · 64 = 1010.
  expect(event!.mean).toBeCloseTo(48, 12)
  expect(event!.sd).toBeCloseTo(Math.sqrt((1010 / 9) * 1.1), 10)
  // Every team of red has 56 on average, of blue 40: three times 8 above and below 48.
  expect(teams!.red.mean).toBeCloseTo(72, 12)
  expect(teams!.blue.mean).toBeCloseTo(24, 12)
  expect(teams!.red.sd).toBe(teams!.blue.sd)
  // The match's own result, one that was voided, and the absent count for nothing.
  const own = { ...results[0]!, match: 'q6' }
  expect(baselinesFor(matches[5]!, matches, [...results, own])).toEqual({ event, teams })
  const replayed = matches.map((each) => (each.id === 'q6' ? { ...each, voids: 'q1' } : each))
  expect(baselinesFor(matches[5]!, replayed, results).event!.mean).toBeCloseTo((48 * 10 - 90) / 8, 12)
})

test('Two normal scores in whole points: a tie is within half a point, and the rest is Thurstone’s', () => {
  const [red, blue] = [
    { mean: 105, sd: 18 },
    { mean: 96, sd: 22 },
  ]
  const { win, tie, loss } = outcomeOf(red, blue)
  expect(win + tie + loss).toBeCloseTo(1, 12)
  // Over one point the density hardly bends.
  expect(win + tie / 2).toBeCloseTo(normalWin(red, blue), 4)
  expect(win + tie / 2).toBeCloseTo(0.6242336017, 4)
})

test('Where forecasts hold, the curve lies in the band nine times in ten, and forecasts that are too bold leave it', () => {
  const events = 24
  const share = (sharpened: number) => {
    let [inside, all] = [0, 0]
    for (let e = 0; e < events; e++) {
      const uniforms = new Uniforms(e + 1, [9])
      const matches = Array.from({ length: 40 }, (_, i) => {
        const tie = 0.02
        const win = 0.1 + 0.78 * uniforms.next()
        const u = uniforms.next()
        return { id: idOf(`${e} ${i}`), win, tie, came: u < win ? 1 : u < win + tie ? 0.5 : 0 }
      })
      const said = matches.map((each) => {
        const odds = (each.win / (1 - each.win - each.tie)) ** sharpened
        return { ...each, win: ((1 - each.tie) * odds) / (1 + odds) }
      })
      const band = consistencyBand(said, 100)
      const { curve } = decompose(fromBothSides(said.map(({ win, tie, came }) => ({ forecast: win + tie / 2, came }))))
      for (const [k, { came }] of curve.entries()) {
        all++
        if (came >= band[k]!.low - 1e-9 && came <= band[k]!.high + 1e-9) inside++
      }
    }
    return inside / all
  }
  // Points of one curve hang together: by events the share has a standard error of about 0.03.
  const held = share(1)
  expect(held).toBeGreaterThan(0.82)
  expect(held).toBeLessThan(0.97)
  expect(share(3)).toBeLessThan(0.7)
})

test('Places in the forecasts are counted in classes, with what chance alone does to them', () => {
  const { counts, low, high } = pitHistogram([0.05, 0.1, 0.3, 0.5, 0.99, 1])
  expect(counts).toEqual([2, 1, 1, 0, 2])
  // Of six in five classes: none has 0.262, three or more 0.099, four or more 0.017.
  expect([low, high]).toEqual([0, 3])
  expect(pitHistogram(Array<number>(100).fill(0.5)).counts).toHaveLength(10)
})
