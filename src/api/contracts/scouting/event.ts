import * as z from 'zod'
import type { EventRecord, Match, Result, Slot } from '../../../model/scouting/types.ts'
import { byId, count, format, id, list, measure, name, points, text } from '../primitives.ts'
import { day, moment, phase, pieces, position, slotState, team } from './shared.ts'

/** Teams of one event at most. */
export const mostTeams = 500

/** Matches of which it is noted who drove, at most. */
const mostDrivers = 1000

export const eventRecord = z
  .strictObject({
    format,
    id,
    name,
    game: id.describe('Id of the game; its newest revision counts'),
    level: id.optional().describe('Level of the event, where a bonus asks for one'),
    teams: list(z.strictObject({ team, name: name.optional() }), 0, mostTeams, 'Teams of the event'),
    playoff: z
      .strictObject({
        format: z.enum(['double', 'bestOf']).describe('Double elimination, or a series of games'),
        games: count(1, 9, 'Games of a series').optional(),
        alliances: count(2, 32, 'Alliances'),
        size: count(3, 4, 'Robots of an alliance'),
      })
      .optional(),
    startsOn: day.optional(),
    halfLife: measure(
      0.5,
      1000,
      'After so many own matches a match counts half in estimates; missing: all count alike',
    ).optional(),
    earlier: z
      .strictObject({
        event: id.describe('Id of the earlier event: stored here, of the same game, and another than this one'),
        discount: measure(0, 1, 'What a match there counts'),
        changed: list(team, 0, mostTeams, 'Teams whose robot was changed since').optional(),
      })
      .optional()
      .describe('An earlier event whose matches count as own ones in estimates'),
    lessons: text.max(2000).optional().describe('What the team takes from the event, a line each'),
    own: team.optional().describe('Our own team at the event'),
    drivers: list(
      z.strictObject({ match: id.describe('Id of the match'), team, driver: id.describe('Who drove') }),
      1,
      mostDrivers,
      'Who drove a team’s robot in a match, where a lead noted it',
    ).optional(),
  })
  .meta({ id: 'EventRecord', description: 'An event: its teams, its game and how its playoffs are played' })
eventRecord satisfies z.ZodType<EventRecord>

const slot = z
  .strictObject({
    team,
    position: position.optional(),
    counts: z.boolean().describe('False for a surrogate: its ranking points are not counted'),
    state: slotState,
  })
  .meta({ id: 'Slot', description: 'A robot’s place in a match' })
slot satisfies z.ZodType<Slot>

const side = z.tuple([slot, slot, slot])

export const scheduledMatch = z
  .strictObject({
    id,
    phase,
    number: count(1, 10_000, 'Number within the phase'),
    play: count(1, 20, 'Which play of this match, from 1'),
    voids: id.optional().describe('Id of the earlier play whose result no longer counts'),
    time: moment.optional(),
    red: side,
    blue: side,
  })
  .meta({ id: 'ScheduledMatch', description: 'A match of the schedule' })
scheduledMatch satisfies z.ZodType<Match>

const resultSide = z.strictObject({
  points: z.strictObject({
    total: points.describe('All points, those from fouls included'),
    autonomous: points.optional(),
    goals: points.optional().describe('Points of goals in teleop'),
    finishes: points.optional(),
    fromFouls: points.optional(),
  }),
  bonuses: list(id, 0, 20, 'Ids of the bonuses that were reached').optional(),
  pieces: byId(pieces, 20, 'Pieces by goal, those of autonomous included').optional(),
})

export const matchResult = z
  .strictObject({ match: id, red: resultSide, blue: resultSide })
  .meta({ id: 'MatchResult', description: 'What the officials counted' })
matchResult satisfies z.ZodType<Result>
