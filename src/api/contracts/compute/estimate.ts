import * as z from 'zod'
import { game } from '../game.ts'
import { byId, count, id, list, measure, probability } from '../primitives.ts'
import { alliance, change, matchResult, observation, pitVisit, scheduledMatch, team } from '../scouting/index.ts'
import { seed } from './compare.ts'

/** Largest body with records of an event: 16 MB. */
export const estimateBody = 16 * 1024 * 1024

const records = {
  game,
  matches: list(scheduledMatch, 0, 500, 'The schedule'),
  observations: list(observation, 0, 10_000, 'Records in force, each about the team that it names'),
  results: list(matchResult, 0, 500, 'Official results').optional(),
  level: id.optional().describe('The event’s level, where a bonus asks for different amounts by level'),
}

const interval = z.tuple([z.number(), z.number()])

/** An estimate as it was answered, whose mean is taken. */
const told = (low: number, high: number, unit: string) =>
  z.strictObject({
    mean: measure(low, high, unit),
    interval80: interval.optional(),
    interval95: interval.optional(),
    next80: interval.nullable().optional(),
    ownWeight: probability.optional(),
  })

const chance = told(0, 1, 'Probability, 0 to 1')
const spread = told(1, 20, 'Geometric standard deviation')
const pieces = told(0, 1000, 'Pieces of a match')
const unused = told(-100_000, 100_000, 'Not taken along').optional()

const prior = z.strictObject({
  estimate: z
    .strictObject({
      team: team.optional(),
      matches: count(0, 500, 'Own matches behind it'),
      goals: byId(z.strictObject({ attempts: pieces, success: chance, points: unused }), 20, 'By goal'),
      trip: z
        .strictObject({
          time: z.strictObject({ median: told(0.1, 600, 's'), within: spread }),
          form: spread,
          pieces: z.record(z.string(), chance).describe('Share of trips by number of pieces, 1 to 100'),
          mix: z.record(z.string(), unused).optional(),
          collecting: unused,
        })
        .nullable(),
      finish: byId(chance, 21, 'Chance of each finish, `none` for none'),
      absent: chance,
      stops: chance,
      auto: unused,
      points: unused,
      solved: unused,
      claimed: pitVisit.shape.claims.optional(),
    })
    .describe('A team of an earlier answer, as it was answered'),
  discount: probability.describe('What each of the matches behind it counts of one at this event, 0 to 1'),
})

export const estimateRequest = z.strictObject({
  ...records,
  visits: list(pitVisit, 0, 2000, 'What teams say of themselves, oldest first').optional(),
  halfLife: measure(0.5, 1000, 'After so many own matches a match counts half; missing: all count alike').optional(),
  priors: z.record(team, prior).optional().describe('Estimates of earlier events, by team'),
  changes: list(change, 0, 2000, 'Changes of robots').optional(),
})

export const forecastRequest = z.strictObject({
  ...records,
  match: id.describe('Id of a match of the schedule; its red alliance is ours'),
  replicates: count(1, 200_000, 'Matches to play'),
  seed,
})

export const estimate = z
  .strictObject({
    mean: z.number(),
    interval80: interval.describe('Where the expectation lies with 80 %'),
    interval95: interval.describe('Where the expectation lies with 95 %'),
    next80: interval
      .nullable()
      .describe('Where the next match lies with 80 %; null where that is no question of its own'),
    ownWeight: z.number().describe('Share of the team’s own matches in it, 0 to 1; the rest is the event’s'),
  })
  .meta({ id: 'Estimate', description: 'What is believed of one quantity of a team' })

const byName = z.record(z.string(), estimate)

const believed = {
  goals: z.record(id, z.strictObject({ attempts: estimate, success: estimate, points: estimate })),
  trip: z
    .strictObject({
      time: z.strictObject({ median: estimate, within: estimate }).describe('Seconds; spread as geometric sd'),
      form: estimate.describe('Spread between matches, as geometric sd'),
      pieces: byName.describe('Share of trips by number of pieces'),
      mix: byName.describe('Share of pieces by goal'),
      collecting: estimate.describe('Mean seconds from a trip’s start to its last piece collected'),
    })
    .nullable()
    .describe('Null where no trip of the event was timed'),
  finish: byName.describe('Chance of each finish, `none` for none'),
  auto: estimate.describe('Points in autonomous'),
  absent: estimate,
  stops: estimate,
  points: estimate.describe('Points of goals in teleop'),
}

const doubt = z.strictObject({
  kind: z
    .enum(['total', 'swap', 'robot', 'scout', 'agreement'])
    .describe(
      'Records and result differ, two goals or robots taken for each other, a scout’s habit, or records disagree',
    ),
  match: id.nullable(),
  alliance: alliance.optional(),
  team: team.optional(),
  scout: id.optional(),
  observation: z.string().optional(),
  size: z.number().describe('In robust standard deviations of the event; of a scout in standard errors'),
  why: z.string(),
})

export const estimateAnswer = z
  .strictObject({
    teams: z.array(
      z.strictObject({
        team,
        matches: z.int().describe('Own matches behind it'),
        ...believed,
        solved: estimate.optional().describe('Contribution to an alliance’s total without fouls, solved from totals'),
        claimed: pitVisit.shape.claims.optional(),
      }),
    ),
    prior: z.strictObject(believed).describe('What is believed of a team that nobody has seen'),
    doubts: z.array(doubt).describe('Largest first; flagged, never left out'),
  })
  .meta({ id: 'EstimateAnswer' })
