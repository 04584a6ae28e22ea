import * as z from 'zod'
import { roles } from '../../model/scouting/roles.ts'
import { slotStates } from '../../model/scouting/types.ts'
import { count, id, list } from '../contracts/primitives.ts'
import { alliance, matchResult, scheduledMatch, seat } from '../contracts/scouting/index.ts'

/** Matches of one event, and people who watch, at most. */
export const mostMatches = 1000
const mostWatchers = 200

export const event = id.describe('Id of the event')
export const mark = z
  .string()
  .min(1)
  .max(40)
  .describe('What the schedule or the assignments were marked with when they were looked at')
const match = id.describe('Id of the match')
const person = id.describe('Id of the person')

export const matches = list(scheduledMatch, 0, mostMatches, 'Matches that are new, or replace those of their ids')
export const remove = list(id, 0, mostMatches, 'Ids of matches that are no longer played').optional()

const sideStates = z.tuple([z.enum(slotStates), z.enum(slotStates), z.enum(slotStates)])

export const resultEntry = z
  .strictObject({
    match,
    base: count(0, 1_000_000, 'Revision of the result that was looked at; 0: there was none'),
    matchRevision: count(1, 1_000_000, 'Revision of the match that was looked at'),
    result: matchResult.nullable().describe('Null takes the result back'),
    states: z
      .strictObject({ red: sideStates, blue: sideStates })
      .optional()
      .describe('Who was absent or disqualified, in the order of the match’s robots'),
  })
  .meta({ id: 'ResultEntry', description: 'A result on its way in, with what it was entered against' })

export const assignment = z
  .strictObject({ match, seat, person: person.nullable().describe('Null: nobody') })
  .meta({ id: 'Assignment', description: 'Who watches whom' })
export const assignments = list(assignment, 0, 6 * mostMatches, 'Seats; those that are not named stay as they are')

export const dealing = {
  people: list(person, 1, mostWatchers, 'Who watches; their order decides between equals'),
  longest: count(1, 100, 'Most matches that somebody watches without a break'),
  rest: count(1, 100, 'Matches in a row without watching that make a break'),
  pause: count(1, 1440, 'Minutes between two matches that make a break for everybody').optional(),
  from: match.optional().describe('The first match to be shared out; those before it stay as they are'),
  keep: z.boolean().optional().describe('Seats that are taken stay so; only empty ones are given out'),
}

// Answers

const said = z.strictObject({ code: z.string(), parts: z.record(z.string(), z.unknown()) })
export const finding = z
  .strictObject({
    match: z.string().nullable().describe('Id of the match; null: several together'),
    weight: z.enum(['wrong', 'odd']).describe('What is wrong is refused, what is odd is only said'),
    message: z.string(),
    said,
  })
  .meta({ id: 'EventFinding' })

const moment = z.string().describe('ISO 8601')
const storedMatch = z.strictObject({ match: scheduledMatch, revision: z.number(), changedAt: moment })
export const schedule = z.strictObject({ matches: z.array(storedMatch), mark: z.string() }).meta({ id: 'Schedule' })

export const storedResult = z
  .strictObject({
    match: z.string(),
    revision: z.number(),
    enteredAt: moment,
    person: z.string().nullable(),
    result: matchResult.nullable().describe('Null: taken back'),
  })
  .meta({ id: 'StoredResult' })

const slotMark = z.strictObject({ counts: z.boolean(), state: z.enum(slotStates) })
const change = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('added'), match: scheduledMatch }),
  z.strictObject({
    kind: z.literal('changed'),
    before: scheduledMatch,
    match: scheduledMatch,
    moved: z.boolean().describe('Its number, time or phase is another, or what it voids'),
    teams: z.array(
      z.strictObject({
        seat,
        from: z.string(),
        to: z.string(),
        follow: z.number().describe('Records by position: they are about the new team from now on'),
        stay: z.number().describe('Records by number: they stay with the team that was seen'),
      }),
    ),
    slots: z.array(z.strictObject({ seat, team: z.string(), from: slotMark, to: slotMark })),
    result: z.boolean().describe('Whether it has a result'),
  }),
  z.strictObject({
    kind: z.literal('removed'),
    match: scheduledMatch,
    records: z.number().describe('Records of it: they are kept'),
    result: z.boolean(),
  }),
])

export const schedulePreview = z
  .strictObject({
    mark: z.string(),
    findings: z.array(finding),
    unknownTeams: z.array(z.string()).describe('Teams that the event does not list'),
    changes: z.array(change),
    same: z.number().describe('Matches that stay as they are'),
  })
  .meta({ id: 'SchedulePreview' })

export const scheduleApplied = z
  .strictObject({
    mark: z.string(),
    touched: z.number().describe('Matches that were changed'),
    undo: z
      .strictObject({ put: z.array(scheduledMatch), remove: z.array(z.string()) })
      .describe('What brings the schedule back to where it was'),
  })
  .meta({ id: 'ScheduleApplied' })

export const resultsPreview = z
  .strictObject({
    findings: z.array(finding),
    entries: z.array(resultEntry).describe('What is to be applied, with the revisions that it was looked at against'),
    fresh: z.number().describe('Matches that had no result'),
    corrected: z.array(z.string()).describe('Ids of matches whose result would be another'),
    same: z.number().describe('Results that are there already'),
  })
  .meta({ id: 'ResultsPreview' })

export const assigned = z.strictObject({ assignments: z.array(assignment), mark: z.string() }).meta({ id: 'Assigned' })

export const whoWatches = z
  .strictObject({
    ...assigned.shape,
    people: z.array(z.strictObject({ id: z.string(), nickname: z.string(), role: z.enum(roles) })),
  })
  .meta({ id: 'WhoWatches', description: 'Who watches whom, and who could' })

export const dealt = z
  .strictObject({
    ...assigned.shape,
    loads: z.array(z.strictObject({ person: z.string(), matches: z.number(), longest: z.number() })),
    broken: z
      .array(z.strictObject({ person: z.string(), match: z.string() }))
      .describe('Who would watch beyond the longest stretch'),
    empty: z.number().describe('Seats that nobody would watch'),
    enough: z.number().describe('So many people are enough for all six robots with these breaks'),
  })
  .meta({ id: 'AssignmentPreview' })

const criterion = z.union([
  z.enum(['rankingPoints', 'score', 'autoPoints', 'finishPoints']),
  z.strictObject({ pieces: z.array(z.string()) }),
])
const rankingRow = z.strictObject({
  rank: z.number(),
  team: z.string(),
  played: z.number(),
  won: z.number(),
  tied: z.number(),
  lost: z.number(),
  absent: z.number(),
  disqualified: z.number(),
  apart: z.number().describe('Matches as a surrogate'),
  sums: z.array(z.number()).describe('By criterion: the sum over its matches'),
  values: z.array(z.number()).describe('By criterion: what is compared'),
  decidedBy: z
    .number()
    .nullable()
    .describe('Place of the criterion that puts it before the next team; null: none does'),
  byLot: z.boolean().describe('Level with a neighbour in everything: the lot decided'),
  shares: z.array(
    z.strictObject({
      match: z.string(),
      alliance,
      as: z.enum(['won', 'tied', 'lost', 'absent', 'disqualified', 'apart']),
      rankingPoints: z.number(),
      bonuses: z.array(z.string()),
      brought: z.array(z.number()),
    }),
  ),
})
export const ranking = z
  .strictObject({
    criteria: z.array(criterion),
    per: z.enum(['match', 'total']),
    seed: z.number(),
    rows: z.array(rankingRow),
    counted: z.number(),
    voided: z.number(),
    waiting: z.number(),
    untold: z.array(
      z.strictObject({ match: z.string(), alliance, bonuses: z.array(z.string()), criteria: z.array(z.number()) }),
    ),
  })
  .meta({ id: 'EventRanking' })
