import * as z from 'zod'
import { matchReport } from '../contracts/compute/match.ts'
import { id } from '../contracts/index.ts'
import { pitVisit, team } from '../contracts/scouting/index.ts'

const interval = z.tuple([z.number(), z.number()])

const estimate = z
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
    teams: z.array(teamEstimate).describe('All teams of the event, in its order'),
  })
  .meta({ id: 'EventEstimates', description: 'What is believed of all teams of an event' })

export const ofTeam = z.strictObject({ event: id.describe('Id of the event'), team })

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
  })
  .meta({ id: 'TeamPage', description: 'What is known of one team of an event' })

export const ofMatch = z.strictObject({ event: id.describe('Id of the event'), match: id.describe('Id of the match') })

export const forecast = z
  .strictObject({
    match: id,
    records: z.int().describe('Observations behind it, those of this match left out'),
    neverSeen: z
      .array(team)
      .describe('Teams of the match of which nothing was seen: they play like the event’s average'),
    report: matchReport.describe('Ours is red, theirs is blue'),
  })
  .meta({ id: 'Forecast', description: 'How a match would end' })
