import * as z from 'zod'
import { baselineNames, type ForecastRecord, measures } from '../../model/scouting/record/index.ts'
import { count, id, list } from '../contracts/primitives.ts'
import { hash, storedMoment, team } from '../contracts/scouting/index.ts'

/** Forecasts that one request makes at most. */
export const mostAtOnce = 12

export const makeForecasts = z.strictObject({
  event: id.describe('Id of the event'),
  most: count(1, mostAtOnce, 'Forecasts to make at most; ask again while some are left').optional(),
})

const kept = { id: hash.describe('Of its content'), madeAt: storedMoment }

export const forecastsMade = z
  .strictObject({
    made: z.array(z.strictObject({ match: id, madeAt: storedMoment })),
    left: z.int().describe('Coming matches of the day that still have none from what is known now'),
    coming: z.int().describe('Coming matches of the day'),
  })
  .meta({ id: 'ForecastsMade' })

export const keptNote = z
  .strictObject(kept)
  .nullable()
  .describe('What is kept of it; null, and nothing is kept, where the match has begun, is over or is played again')

const interval = z.tuple([z.number(), z.number()])
const said = { ...kept, version: z.int(), win: z.number(), tie: z.number(), loss: z.number() }
const score = z.strictObject({ mean: z.number(), interval80: interval.describe('In the middle, with 80 %') })
const range = interval.nullable().describe('95 % interval by matches; null with fewer than five')

const row = z.strictObject({
  match: id,
  state: z
    .enum(['scored', 'waiting', 'voided', 'late', 'otherTeams', 'gone'])
    .describe(
      'Judged; without a result; played again; forecast only behind the result; another team played; out of the schedule',
    ),
  ...said,
  records: z.int().describe('Observations behind it'),
  neverSeen: z.array(team),
  teams: z.strictObject({ red: z.array(team), blue: z.array(team) }),
  scores: z.strictObject({ red: score, blue: score }),
  result: z
    .strictObject({
      red: z.number(),
      blue: z.number(),
      since: storedMoment.describe('Since when the match has a result'),
    })
    .nullable(),
  all: z.array(z.strictObject(said)).describe('All forecasts of the match, oldest first'),
})

const judgement = z.strictObject({
  matches: z.int().describe('Matches that are judged'),
  calls: z
    .array(
      z.strictObject({
        atLeast: z.number(),
        called: z.int().describe('Matches whose likelier winner had at least this chance'),
        came: z.int().describe('Of them, won by that side'),
        expected: z.number(),
        low: z.int().describe('Where the number lies with 95 % if chances hold'),
        high: z.int(),
      }),
    )
    .describe('Of all matches, and from 0.7 and 0.9'),
  brier: z
    .strictObject({
      score: z.number(),
      miscalibration: z.number(),
      discrimination: z.number(),
      uncertainty: z.number(),
    })
    .describe('score = miscalibration − discrimination + uncertainty (CORP), each match from both sides'),
  curve: z
    .array(
      z.strictObject({
        forecast: z.number().describe('Chance of the likelier side, a tie as half'),
        came: z.number().describe('How often it won, by the best rising fit'),
        low: z.number().describe('Where that lies with 90 % if forecasts hold'),
        high: z.number(),
        matches: z.int(),
      }),
    )
    .describe('Calibration'),
  means: z.strictObject({
    brier: z.number(),
    rps: z.number().describe('Ranked probability score of loss, tie and win, 0 to 1'),
    crps: z.number().describe('Points that scores lay off'),
  }),
  coverage: z.array(
    z.strictObject({
      level: z.number(),
      scores: z.int(),
      inside: z.int(),
      expected: z.number().describe('By the forecasts themselves, whose points are whole'),
      off: range.describe('Share inside less share expected'),
    }),
  ),
  pit: z
    .strictObject({ counts: z.array(z.int()), low: z.int(), high: z.int() })
    .describe(
      'Scores by where they lay in their forecasts, from below to above; each count lies from low to high with 90 %',
    ),
  compared: z.array(
    z.strictObject({
      baseline: z.enum(baselineNames).describe('A coin, all alliances alike, or teams by official totals'),
      measure: z.enum(measures),
      matches: z.int(),
      ours: z.number(),
      theirs: z.number(),
      difference: range.describe('Ours less theirs; below 0 ours is better'),
    }),
  ),
})
judgement satisfies z.ZodType<ForecastRecord['judgement']>

export const forecastRecord = z
  .strictObject({
    played: z.int().describe('Matches with a result that counts, forecast or not'),
    judgement: judgement.nullable().describe('Null while no forecast can be judged'),
    matches: list(row, 0, 5000, 'Matches that were forecast, in the order of play, each by the forecast that counts'),
  })
  .meta({ id: 'ForecastRecord', description: 'What became of an event’s forecasts' })
