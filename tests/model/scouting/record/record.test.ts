import { expect, test } from 'vitest'
import { Uniforms } from '../../../../src/model/random/index.ts'
import { type KeptForecast, recordOf, type StandingResult } from '../../../../src/model/scouting/record/index.ts'
import { normalCdf, normalQuantile } from '../../../../src/model/scouting/statistics/index.ts'
import { forecast, match, result } from './forecasts.ts'

test('The last forecast before a result counts; voided, absent and late ones are told and not judged', () => {
  const matches = [match(1), match(2), match(3), match(4), { ...match(5), voids: 'q2' }]
  const [early, late] = [forecast('q1', 1, { win: 0.6, loss: 0.3 }), forecast('q1', 3, { win: 0.8, loss: 0.1 })]
  const forecasts = [
    early,
    forecast('q2', 2),
    late,
    forecast('q3', 4),
    forecast('q9', 4),
    forecast('q4', 9),
    forecast('q1', 12),
  ]
  const results = [result('q1', 10, [50, 40]), result('q2', 10, [50, 40]), result('q4', 8, [50, 40])]
  const { matches: told, played, judgement } = recordOf({ forecasts, matches, results })
  expect(told.map(({ match: id, state, all }) => [id, state, all.length])).toEqual([
    ['q1', 'scored', 3],
    ['q2', 'voided', 1],
    ['q3', 'waiting', 1],
    ['q4', 'late', 1],
    ['q9', 'gone', 1],
  ])
  expect(told[0]!.forecast).toBe(late)
  expect(played).toBe(2)
  expect(judgement!.matches).toBe(1)
  // 0.8 and half of the tie: (0.85 − 1)².
  expect(judgement!.means.brier).toBeCloseTo(0.0225, 12)
  expect(judgement!.calls[0]).toMatchObject({ called: 1, came: 1 })
  expect(recordOf({ forecasts: [], matches, results }).judgement).toBeNull()
  // With its teams in other places it is the same match, with another team it is not what was forecast.
  const [one, two, three] = match(1).red
  const turned = recordOf({ forecasts, matches: [match(1, { red: [two, one, three] })], results })
  expect(turned.matches[0]!.state).toBe('scored')
  const other = recordOf({ forecasts, matches: [match(1, { red: [{ ...one, team: '99' }, two, three] })], results })
  expect([other.matches[0]!.state, other.judgement]).toEqual(['otherTeams', null])
})

/** Scores of normal alliances, forecast with a spread that is right times `spread`. */
function season(spread: number, matches = 150) {
  const uniforms = new Uniforms(20_310_315)
  const normal = () => normalQuantile(uniforms.next())
  const forecasts: KeptForecast[] = []
  const results: StandingResult[] = []
  for (let n = 1; n <= matches; n++) {
    const [red, blue] = [60 + 12 * normal(), 60 + 12 * normal()]
    const histogram = (mean: number) => {
      const first = Math.round(mean - 60)
      const at = (x: number) => normalCdf((x - mean) / (10 * spread))
      return {
        first,
        counts: Array.from({ length: 121 }, (_, k) => Math.round(4000 * (at(first + k + 0.5) - at(first + k - 0.5)))),
      }
    }
    const lead = (red - blue) / (10 * spread * Math.SQRT2)
    const [win, loss] = [-0.5, -0.5].map((half, i) =>
      normalCdf((i === 0 ? lead : -lead) + half / (10 * spread * Math.SQRT2)),
    )
    const event = { mean: 60, sd: Math.hypot(12, 10) }
    forecasts.push(
      forecast(`q${n}`, 0, {
        ...{ replicates: 4000, win: win!, loss: loss!, tie: 1 - win! - loss! },
        scores: { red: histogram(red), blue: histogram(blue) },
        baselines: { event, teams: { red: event, blue: event } },
      }),
    )
    results.push(result(`q${n}`, 1, [Math.round(red + 10 * normal()), Math.round(blue + 10 * normal())]))
  }
  const schedule = Array.from({ length: matches }, (_, i) => match(i + 1))
  return recordOf({ forecasts, matches: schedule, results }).judgement!
}

const holding = season(1)

test('Forecasts that hold are found to hold: calls, coverage, places in the forecast, and better than all baselines', () => {
  const { calls, coverage, pit, compared, brier, means, curve } = holding
  for (const { came, low, high } of calls) expect(came >= low && came <= high).toBe(true)
  for (const { off } of coverage) expect(off![0] < 0 && off![1] > 0).toBe(true)
  // Each of ten classes lies outside of its 90 % once in ten times; three of them together in one of fifteen.
  expect(pit.counts.filter((n) => n < pit.low || n > pit.high).length).toBeLessThanOrEqual(2)
  for (const { difference, ours, theirs } of compared) {
    expect(ours).toBeLessThan(theirs)
    expect(difference![1]).toBeLessThan(0)
  }
  expect(means.brier).toBeCloseTo(brier.score, 12)
  // A coin is what the decomposition calls uncertainty.
  expect(brier.uncertainty).toBeCloseTo(
    compared.find((each) => each.baseline === 'coin' && each.measure === 'brier')!.theirs,
    12,
  )
  // The mean distance of a normal score from its own forecast is sd / √π.
  expect(means.crps / (10 / Math.sqrt(Math.PI))).toBeCloseTo(1, 1)
  expect(curve[0]!.forecast).toBeGreaterThanOrEqual(0.5)
})

test('Forecasts that are too bold are found out: by calls, coverage, places in the forecast and miscalibration', () => {
  const [bold, right] = [season(0.4), holding]
  const [all] = bold.calls
  expect(all!.came).toBeLessThan(all!.low)
  for (const { off } of bold.coverage) expect(off![1]).toBeLessThan(0)
  const ends = bold.pit.counts[0]! + bold.pit.counts.at(-1)!
  expect(ends).toBeGreaterThan(2 * bold.pit.high)
  expect(bold.brier.miscalibration).toBeGreaterThan(right.brier.miscalibration)
  expect(bold.means.crps).toBeGreaterThan(right.means.crps)
})

test('The same forecasts give the same picture each time', () => {
  expect(season(1, 20)).toEqual(season(1, 20))
})
