import * as z from 'zod'
import type { AgreedPlan, Ending } from '../../model/briefing/index.ts'
import type { Game, Option } from '../../model/documents/types.ts'
import type { EventRanking, RankingRow } from '../../model/event/index.ts'
import type { EventRecord, Match, Result } from '../../model/scouting/index.ts'
import type { Calls } from '../../model/scouting/record/index.ts'
import { game, id, option } from '../contracts/index.ts'
import { agreedPlan, eventRecord, matchResult, scheduledMatch, team } from '../contracts/scouting/index.ts'
import { type Behind, behind, kept } from '../estimates/atOnce.ts'

/** Everything that a browser needs to brief and to pick without a connection. */
export interface EventPack {
  event: EventRecord
  game: Game
  /** Of the game's document. */
  revision: number
  /** Our teams at the event; empty where nobody has said so. */
  own: string[]
  /** In the order of play. */
  matches: Match[]
  /** Of matches that have one. */
  results: Result[]
  ranking: Pick<EventRanking, 'criteria' | 'per'> & { rows: Pick<RankingRow, 'rank' | 'team' | 'played' | 'values'>[] }
  /** All of the event's teams as they were seen, each with 100 draws of what is believed of it. Draw d of all belongs together. */
  robots: { [team: string]: Option }
  /** In how many matches each team was seen. */
  seen: { [team: string]: number }
  /** Observations of matches that count. */
  records: number
  /** How often forecasts kept before their matches came true; empty while none can be judged. */
  calls: Calls[]
  /** What was agreed for matches, oldest first, and how robots ended those that are over. */
  plans: AgreedPlan[]
  endings: Ending[]
  /** SHA-256 of what robots and forecasts are made from. */
  from: string
  /** Changes with the contents. */
  mark: string
  /** By the server's clock (ISO 8601): until then it was all that was known. */
  madeAt: string
  /** What came in since then and is not in it; null: nothing. */
  behind: Behind
}

/** Where the browser has everything already. */
export type EventPackAnswer = EventPack | { same: true; mark: string; madeAt: string; behind: Behind }

export const packRequest = z.strictObject({
  event: id.describe('Id of the event'),
  since: z.string().max(100).optional().describe('The mark that the browser has'),
  kept,
})

const mark = z.string().describe('Changes with the contents: whoever has this one needs nothing new')
const madeAt = z.string().describe('Until when that was all that was known (ISO 8601)')

export const calls = z
  .strictObject({
    atLeast: z.number(),
    called: z.int(),
    came: z.int(),
    expected: z.number(),
    low: z.number(),
    high: z.number(),
  })
  .describe('Matches called with at least some chance, how many of them came so, and how many would by chance')

export const packAnswer = z
  .union([
    z.strictObject({ same: z.literal(true), mark, madeAt, behind }),
    z.strictObject({
      event: eventRecord,
      game,
      revision: z.int().describe('Of the game'),
      own: z.array(team).describe('Our teams at the event; empty where nobody has said so'),
      matches: z.array(scheduledMatch).describe('In the order of play'),
      results: z.array(matchResult),
      ranking: z.strictObject({
        criteria: z.array(z.unknown()),
        per: z.enum(['match', 'total']),
        rows: z.array(z.strictObject({ rank: z.int(), team, played: z.int(), values: z.array(z.number()) })),
      }),
      robots: z.record(team, option).describe('Teams as they were seen, with draws of what is believed of each'),
      seen: z.record(team, z.int()).describe('In how many matches each team was seen'),
      records: z.int().describe('Observations of matches that count'),
      calls: z.array(calls),
      plans: z.array(agreedPlan).describe('What was agreed for matches, oldest first'),
      endings: z
        .array(
          z.strictObject({
            match: id,
            team,
            left: z.number().nullable().describe('Time left (s) at which it left for its finish; null: nobody saw it'),
            finish: z.string().nullable().optional().describe('Missing: nobody said'),
          }),
        )
        .describe('How robots ended the matches that something was agreed for'),
      from: z.string().describe('SHA-256 of what robots and forecasts are made from'),
      mark,
      madeAt,
      behind,
    }),
  ])
  .meta({
    id: 'EventPack',
    description: 'What a browser keeps of an event, so that it briefs and picks without a connection',
  })
