import * as z from 'zod'
import type { TimedLeg, TimedPart, TimedTrial, TimingRecord } from '../../model/documents/timing.ts'
import { count, format, id, list, longest, measure, name } from './primitives.ts'

export const timedLeg = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('collect'), source: id }),
  z.strictObject({ kind: z.literal('score'), goal: id, entry: count(0, 9, 'Which way to score there, from 0') }),
  z.strictObject({ kind: z.literal('finish'), finish: id }),
])
timedLeg satisfies z.ZodType<TimedLeg>

const part = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('stage'), stage: id }),
  z.strictObject({ kind: z.literal('whole') }),
  z.strictObject({ kind: z.literal('retry') }),
  z.strictObject({
    kind: z.literal('drive'),
    from: id.describe('Start or spot where the drive begins'),
    to: id.describe('Spot where it ends'),
  }),
])
part satisfies z.ZodType<TimedPart>

const trial = z.strictObject({
  id,
  seconds: measure(0, longest, 'Measured time (s)'),
  at: z.iso.datetime().describe('When it ended, ISO 8601 in UTC'),
  struck: z.string().trim().min(1).max(200).nullable().describe('Why it does not count; null: it counts'),
})
trial satisfies z.ZodType<TimedTrial>

export const timingRecord = z
  .strictObject({
    format,
    id,
    name,
    design: id.describe('Id of the design'),
    leg: timedLeg.describe('Which leg'),
    part: part.describe('What of the leg: a stage, the whole leg, a repeated try, or its drive'),
    trials: list(trial, 0, 2000, 'Measured times'),
  })
  .meta({ id: 'TimingRecord', description: 'Times of one part of a design, taken on the practice field' })
timingRecord satisfies z.ZodType<TimingRecord>
