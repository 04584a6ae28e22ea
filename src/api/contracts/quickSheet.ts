import * as z from 'zod'
import type { QuickLeg, QuickSheetRecord, ReadingRecord } from '../../model/documents/quickSheet.ts'
import { rising } from './agree.ts'
import { above, count, format, id, list, longest, measure, name, points, probability } from './primitives.ts'
import { reference } from './records.ts'

const seconds = measure(0, longest, 's')

const three = { low: seconds, likely: seconds, high: seconds }

/** What one person guesses of a leg. */
export const guess = z
  .strictObject(three)
  .superRefine(rising)
  .meta({ id: 'Guess', description: 'The shortest trip, the usual one and the longest (s), driving included' })

const time = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('fixed'), seconds }),
    z.strictObject({ kind: z.literal('range'), ...three }).superRefine(rising),
  ])
  .describe('The leg’s whole time, driving and repeated tries included (s)')

const leg = {
  time,
  belief: guess.nullable().describe('What is not known of the usual trip; null where nobody was asked'),
}
const collectLeg = z.strictObject(leg)
collectLeg satisfies z.ZodType<QuickLeg>
const trying = z.strictObject({ ...leg, success: probability })

export const way = z
  .strictObject({
    id,
    name,
    sources: list(id, 0, 20, 'Ids of sources'),
    goals: list(id, 0, 20, 'Ids of goals'),
    finish: id.nullable().describe('Id of the finish, or none'),
    load: count(1, 100, 'Pieces per trip'),
    collect: collectLeg,
    score: trying,
    finishing: trying,
    extra: points.describe('Points a match that are added by hand'),
    holdSeconds: measure(0, longest, 'Seconds of holding that one piece buys, at goals that pay for holding'),
  })
  .meta({ id: 'QuickWay', description: 'A way to play with one number per leg' })

const strength = z.strictObject({
  times: above(0, 10, 'Factor on all times'),
  success: measure(0, 10, 'Factor on all chances of success; a chance ends at 1'),
})

export const quickSheetRecord = z
  .strictObject({
    format,
    id,
    name,
    game: reference,
    strengths: z.strictObject({ weak: strength, middling: strength, strong: strength }),
    ways: list(way, 0, 30, 'Ways to play'),
  })
  .meta({ id: 'QuickSheetRecord' })
quickSheetRecord satisfies z.ZodType<QuickSheetRecord>

export const readingRecord = z
  .strictObject({
    format,
    id,
    name,
    rule: z.string().max(200).describe('The rule that is read, by its number in the manual'),
    game: reference,
  })
  .meta({ id: 'ReadingRecord', description: 'A named revision of a game: the rules as they may be read' })
readingRecord satisfies z.ZodType<ReadingRecord>
