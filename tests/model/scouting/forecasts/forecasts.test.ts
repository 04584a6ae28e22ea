import { expect, it } from 'vitest'
import { normalCdf } from '../../../../src/model/scouting/statistics/index.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { clusteredMean, recalibration, type Scored } from './clustered.ts'
import { averageLead, forecasts, generated } from './event.ts'

interface Called extends Scored {
  ideal: number
  averages: number
}

/** Every team has played three matches or more. */
const measure = inLongForm ? { events: 200, rounds: [3, 5, 8] } : { events: 8, rounds: [3, 7] }

function called(): Called[] {
  return Array.from({ length: measure.events }, (_, event) => {
    const of = generated(100 + event, { teams: 24, rounds: 9 })
    return measure.rounds.flatMap((round) =>
      forecasts(of, round).map(({ own, ideal, match }): Called => {
        const y = match.lead > 0 ? 1 : match.lead < 0 ? 0 : 0.5
        return { event, p: own, ideal, averages: averageLead(of, match), y }
      }),
    )
  }).flat()
}

const off = (p: number, y: number) => (p - y) ** 2

/** Averages with the spread that suits them best after all of it is known: stronger than any that could have been had before. */
function bestSpread(all: readonly Called[]): number {
  const score = (spread: number) => all.reduce((sum, { averages, y }) => sum + off(normalCdf(averages / spread), y), 0)
  return Array.from({ length: 116 }, (_, k) => 5 + k).reduce((best, spread) =>
    score(spread) < score(best) ? spread : best,
  )
}

it('chances to win are as often right as they say, and hardly worse than with the true numbers of the generator', {
  timeout: inLongForm ? 900_000 : 30_000,
}, () => {
  const all = called()
  const { intercept, slope } = recalibration(all)
  const against = (of: (one: Called) => number) =>
    clusteredMean(all.map((one) => ({ event: one.event, value: off(one.p, one.y) - off(of(one), one.y) })))
  const spread = bestSpread(all)
  const excess = against(({ ideal }) => ideal)
  const coin = against(() => 0.5)
  const averages = against((one) => normalCdf(one.averages / spread))
  const found = JSON.stringify({ matches: all.length, intercept, slope, excess, coin, averages, spread })
  // 95 % over events where there are many; few hardly know their own spread.
  const z = inLongForm ? 1.96 : 3.5
  expect(Math.abs(intercept.value), found).toBeLessThan(z * intercept.error)
  expect(Math.abs(slope.value - 1), found).toBeLessThan(z * slope.error)
  expect(excess.value, found).toBeLessThanOrEqual(0.003 + (inLongForm ? 0 : 3 * excess.error))
  expect(coin.value + (inLongForm ? 1.96 * coin.error : 0), found).toBeLessThan(0)
  expect(averages.value, found).toBeLessThan(inLongForm ? 0 : 3 * averages.error)
  // Of what is said to be nearly sure some fails, and chances do differ: a forecast of ½ would pass most of this.
  expect(Math.max(...all.map(({ p }) => p)), found).toBeGreaterThan(0.8)
})

it('a forecast that is too sure of itself is told', () => {
  const chance = (k: number) => ((k * 0.618_033_988_75) % 1) * 0.98 + 0.01
  const honest = Array.from({ length: 4000 }, (_, k): Scored => {
    const p = chance(k)
    return { event: k % 40, p, y: Number((k * 0.754_877_666) % 1 < p) }
  })
  const { intercept, slope } = recalibration(honest)
  expect(Math.abs(intercept.value)).toBeLessThan(3.5 * intercept.error + 0.01)
  expect(Math.abs(slope.value - 1)).toBeLessThan(3.5 * slope.error + 0.01)
  const sure = honest.map((one) => ({ ...one, p: one.p ** 2 / (one.p ** 2 + (1 - one.p) ** 2) }))
  // Twice the log-odds: half the slope, exactly.
  expect(recalibration(sure).slope.value).toBeCloseTo(slope.value / 2, 6)
})
