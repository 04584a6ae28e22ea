import * as z from 'zod'
import type { KeptForecast } from '../../../model/scouting/record/index.ts'
import { count, id, list, measure, probability } from '../primitives.ts'
import { team } from './shared.ts'

/** As the store writes moments: another way of writing would be another hash. */
export const storedMoment = z
  .string()
  .refine((text) => !Number.isNaN(Date.parse(text)) && new Date(text).toISOString() === text, 'a moment in UTC, to ms')
  .describe('ISO 8601, in UTC')

export const hash = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe('SHA-256 in hexadecimal')

const points = measure(-100_000, 100_000, 'Points')
const histogram = z.strictObject({
  first: count(-100_000, 100_000, 'Least points'),
  counts: list(
    count(0, 10_000_000, 'Simulated matches'),
    1,
    20_000,
    'Matches that came to first, first + 1, … points',
  ).refine((counts) => counts.some((n) => n > 0), 'counts of at least one match'),
})
const normal = z.strictObject({ mean: points, sd: measure(0.01, 100_000, 'Standard deviation (points)') })
const teams = list(team, 1, 3, 'Positions 1 to 3')

const both = <Of extends z.ZodType>(of: Of) => z.strictObject({ red: of, blue: of })

export const forecastBody = z
  .strictObject({
    teams: both(teams),
    records: count(0, 1_000_000, 'Observations behind it'),
    neverSeen: list(team, 0, 6, 'Teams of which nothing had been seen'),
    replicates: count(1, 10_000_000, 'Simulated matches'),
    seed: count(0, Number.MAX_SAFE_INTEGER, 'Seed'),
    win: probability.describe('That red wins'),
    tie: probability,
    loss: probability.describe('That blue wins'),
    scores: both(histogram),
    baselines: z
      .strictObject({ event: normal.nullable(), teams: both(normal).nullable() })
      .describe('What official totals alone would have said: all alliances alike, or by team; null with too few'),
  })
  .refine(({ win, tie, loss }) => Math.abs(win + tie + loss - 1) < 1e-6, 'chances that add up to 1')

export const keptForecast = z
  .strictObject({
    id: hash.describe('SHA-256 of the canonical JSON of all else'),
    match: id,
    madeAt: storedMoment,
    from: hash.describe('SHA-256 of what it was made from'),
    version: count(1, 1_000_000, 'Version of the model'),
    body: forecastBody,
  })
  .meta({ id: 'KeptForecast', description: 'A forecast as it was shown before its match' })
keptForecast satisfies z.ZodType<KeptForecast>
