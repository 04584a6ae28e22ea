import * as z from 'zod'
import { categories } from '../../model/scouting/solved/index.ts'
import { estimate } from '../contracts/compute/estimate.ts'
import { fieldReport, onlyRuns } from '../contracts/compute/field.ts'
import { matchReport } from '../contracts/compute/match.ts'
import { id, written } from '../contracts/index.ts'
import { alliance, pitVisit, team, uuid } from '../contracts/scouting/index.ts'
import { keptNote } from './recordContracts.ts'

const ofGoal = z.strictObject({ attempts: estimate, success: estimate, placed: estimate })

const teamEstimate = z
  .strictObject({
    team,
    matches: z.int().describe('Own matches of this event behind it'),
    neverSeen: z.boolean().describe('Nothing of it has been seen: all of this is the event’s'),
    attempts: estimate.describe('Pieces tried in teleop, in a match without stop, lost time or defence'),
    points: estimate.describe('Points of goals in teleop, in such a match'),
    goals: z.record(id, ofGoal).describe('By goal'),
    trip: z
      .strictObject({ median: estimate, within: estimate, form: estimate })
      .nullable()
      .describe('Seconds from trip to trip, and its spreads within and between matches as geometric sd'),
    pieces: z.array(estimate).describe('Share of trips with 1, 2, … pieces'),
    finish: z.record(z.string(), estimate).describe('Chance of each finish, `none` for none'),
    finishPoints: estimate,
    autonomous: z.record(id, estimate).describe('Pieces that hit in autonomous, by goal'),
    autonomousPoints: estimate,
    leaves: estimate.describe('Chance to move off the start'),
    absent: estimate,
    stops: estimate,
    departs: estimate.describe('Time left when it departs for its finish (s)'),
    defence: z.number().nullable().describe('Seconds of defence in a match; null where it was not watched'),
  })
  .meta({ id: 'TeamEstimate', description: 'What is believed of a team after what was seen' })

export const eventEstimates = z
  .strictObject({
    records: z.int().describe('Observations that count'),
    matches: z.int().describe('Matches of which something was seen'),
    halfLife: z.number().nullable().describe('After so many own matches a match counts half; null: all count alike'),
    earlier: z
      .strictObject({
        event: id,
        name: z
          .string()
          .nullable()
          .describe('Null: it is not stored here, or played by another game, and counts for nothing'),
        discount: z.number(),
        matches: z.int().nullable().describe('Its matches in which something was seen of teams of this event'),
        teams: z.int(),
      })
      .nullable()
      .describe('The earlier event whose matches count as own ones, at the discount'),
    teams: z.array(teamEstimate).describe('All teams of the event, in its order'),
  })
  .meta({ id: 'EventEstimates', description: 'What is believed of all teams of an event' })

export const ofTeam = z.strictObject({ event: id.describe('Id of the event'), team })

export const ofTeams = z.strictObject({
  event: id.describe('Id of the event'),
  teams: written(/^[A-Za-z0-9-]{1,12}(,[A-Za-z0-9-]{1,12}){1,5}$/, (got) => ({
    code: 'notTeams',
    parts: { got },
  })).describe('Two to six teams of the event, with commas between'),
})

const chances = z.array(z.array(z.number())).nullable()

export const sideBySide = z
  .strictObject({
    teams: z.array(team),
    total: z.array(estimate).describe('Points of goals in teleop, finish and autonomous, in a match played to its end'),
    better: z
      .strictObject({
        total: chances,
        points: chances,
        attempts: chances,
        trip: chances.describe('By fewer seconds'),
        finishPoints: chances,
        autonomousPoints: chances,
      })
      .describe('Chance that the team of the row is better than that of the column, on common draws'),
  })
  .meta({ id: 'SideBySide', description: 'Some teams beside each other' })

const contribution = z.strictObject({
  mean: z.number(),
  interval80: z.tuple([z.number(), z.number()]),
  interval95: z.tuple([z.number(), z.number()]),
  totals: z.int().describe('Totals that it took part in'),
})

export const teamPage = z
  .strictObject({
    estimate: teamEstimate,
    watched: z
      .array(
        z.strictObject({
          match: id,
          records: z.array(z.strictObject({ id: z.string(), scout: z.string(), counts: z.boolean() })),
          timeline: z
            .array(z.looseObject({ elapsed: z.number(), what: z.string() }))
            .describe('Of the first record that counts, with the times of the match’s clock'),
          absent: z.boolean(),
          finish: z.string().nullable().optional().describe('Missing: nobody said'),
          scored: z.record(id, z.number()).describe('Pieces by goal in teleop, mean of the records that count'),
          missed: z.number().describe('Pieces that missed in teleop'),
        }),
      )
      .describe('Its matches, in the order of play'),
    claims: z.array(pitVisit).describe('What it says of itself, oldest first'),
    solved: z
      .partialRecord(z.enum(categories), contribution)
      .describe(
        'Points that it brings, solved from official totals without fouls; a category that they do not tell is missing',
      ),
  })
  .meta({ id: 'TeamPage', description: 'What is known of one team of an event' })

export const timedTeams = z
  .array(
    z.strictObject({
      team,
      matches: z.int().describe('Matches with a record that has times'),
      practice: z.int().describe('The same of practice'),
    }),
  )
  .describe('Those with practice first')

export const ofField = z.strictObject({
  event: id.describe('Id of the event'),
  team,
  design: id.describe('Id of the design that it is put against'),
  revision: z.coerce.number().int().min(1).max(1_000_000_000).optional().describe('The newest where nothing is said'),
  only: onlyRuns.optional(),
  decision: id
    .optional()
    .describe('Id of a decision record: the design is taken as it is frozen there; without a revision'),
})

export const fieldCheck = z
  .strictObject({
    team,
    design: z.strictObject({
      id,
      name: z.string(),
      revision: z.int().nullable().describe('Null: not known of what a decision record has frozen'),
    }),
    decision: z
      .strictObject({ id, name: z.string(), revision: z.int() })
      .nullable()
      .describe('The record whose frozen robot it is; null: a stored revision of the design'),
    changes: z.int().describe('How often the robot was changed during the event: earlier runs are of it as it was'),
    report: fieldReport,
  })
  .meta({ id: 'FieldCheck', description: 'A robot’s timelines against a design' })

export const ofMatch = z.strictObject({ event: id.describe('Id of the event'), match: id.describe('Id of the match') })

export const forecast = z
  .strictObject({
    match: id,
    records: z.int().describe('Observations behind it, those of this match left out'),
    neverSeen: z
      .array(team)
      .describe('Teams of the match of which nothing was seen: they play like the event’s average'),
    report: matchReport.describe('Ours is red, theirs is blue'),
    kept: keptNote,
  })
  .meta({ id: 'Forecast', description: 'How a match would end' })

const about = {
  records: z.array(z.string()).describe('Ids of the records that it may be'),
  teams: z.array(team).describe('Robots that they are about'),
  size: z.number().describe('In robust standard deviations of the event; of a scout in standard errors'),
}

const category = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('pieces'), goal: id }),
  z.strictObject({ kind: z.literal('autonomous') }),
  z.strictObject({ kind: z.literal('finishes') }),
])

const ofSide = {
  ...about,
  match: id,
  alliance,
  evidence: z
    .array(z.strictObject({ category, official: z.number(), scouted: z.number(), sds: z.number() }))
    .describe('What officials counted beside what scouts saw'),
}

const two = z.tuple([id, id])
const ofScout = { ...about, kind: z.literal('scout'), scout: id, match: z.null() }

export const doubts = z
  .array(
    z.union([
      z.strictObject({ kind: z.literal('differs'), ...ofSide }),
      z.strictObject({ kind: z.literal('swapped'), scout: id, goals: two, ...ofSide }),
      z.strictObject({ kind: z.literal('wrongRobot'), scout: id, fits: team, ...ofSide }),
      z.strictObject({
        kind: z.literal('disagree'),
        match: id,
        alliance,
        goal: id,
        low: z.number(),
        high: z.number(),
        ...about,
      }),
      z.strictObject({ habit: z.literal('swaps'), goals: two, ...ofScout }),
      z.strictObject({ habit: z.literal('offBy'), goal: id, perRecord: z.number(), ...ofScout }),
    ]),
  )
  .describe('Largest first; a doubted record counts until a lead decides otherwise')

export const halfLives = z
  .array(
    z.strictObject({
      halfLife: z.number().nullable().describe('In own matches; null: all count alike'),
      logScore: z.number().describe('Sum of the logarithms of what was given to each next match; higher is better'),
      gain: z.number().describe('Less that of the first'),
      standardError: z.number().describe('Of the gain, over teams'),
    }),
  )
  .meta({ id: 'HalfLives', description: 'What speaks for each half-life of own matches' })

export const withoutRequest = z.strictObject({
  event: id.describe('Id of the event'),
  records: z.array(uuid).min(1).max(1000).describe('Ids of the records to leave out'),
})

const ofTeamWithout = z.strictObject({
  matches: z.int(),
  points: estimate,
  attempts: estimate,
  finishPoints: estimate,
  autonomousPoints: estimate,
})

const ended = z.strictObject({ win: z.number().describe('A tie counted half'), score: z.number() })

export const without = z
  .strictObject({
    teams: z.array(z.strictObject({ team, with: ofTeamWithout, without: ofTeamWithout })),
    matches: z
      .array(z.strictObject({ match: id, alliance, with: ended, without: ended }))
      .describe('The first coming matches of these robots, from their side'),
    coming: z.int().describe('Coming matches of these robots in all'),
  })
  .meta({ id: 'Without', description: 'What is believed and forecast with and without some records' })

export const changedRequest = z.strictObject({
  event: id.describe('Id of the event'),
  records: z.array(uuid).min(1).max(6).describe('Ids of own records'),
})

export const changed = z
  .array(
    z.strictObject({
      record: z.string(),
      match: id,
      team,
      without: z.number().describe('Pieces tried a match as they would be believed without the record'),
      with: z.number().describe('Pieces tried a match as they are believed'),
      matches: z.int().describe('Own matches behind the latter'),
    }),
  )
  .meta({ id: 'Changed', description: 'What records changed; a record that does not count is missing' })
