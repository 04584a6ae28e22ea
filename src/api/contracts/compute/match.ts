import * as z from 'zod'
import type { Both, Chance, Estimated, MatchReport, Measured, RobotReport } from '../../../model/match/types.ts'
import { game } from '../game.ts'
import { option } from '../option.ts'
import { count, id, list, measure } from '../primitives.ts'
import { seed } from './compare.ts'
import { type Warning, warnings } from './warning.ts'

const three = (what: string) => list(option, 3, 3, what)

export const matchRequest = z.strictObject({
  game,
  level: id.optional().describe('The event’s level, where a bonus asks for different amounts by level'),
  ours: three('Our alliance, positions 1 to 3'),
  theirs: three('The other alliance, positions 1 to 3'),
  replicates: count(1, 1_000_000, 'Matches to play; the most where a precision is asked for'),
  seed,
  precision: measure(0.0005, 0.5, 'Largest standard error of win + ½ tie to stop at').optional(),
})

const text = z.string()

const measured = z
  .strictObject({ mean: z.number(), sd: z.number().describe('Of one match'), standardError: z.number() })
  .meta({ id: 'Measured', description: 'A mean over matches' })
measured satisfies z.ZodType<Measured>

const chance = z.strictObject({ probability: z.number(), standardError: z.number() }).meta({ id: 'Chance' })
chance satisfies z.ZodType<Chance>

const estimated = z.strictObject({ value: z.number(), standardError: z.number() })
estimated satisfies z.ZodType<Estimated>

const both = <T extends z.ZodType>(of: T) => z.strictObject({ ours: of, theirs: of })
both(measured) satisfies z.ZodType<Both<Measured>>

const distribution = z.array(z.tuple([z.number(), z.number()])).describe('[points, probability] by whole points')

const robot = z.strictObject({
  points: measured.describe('Its own: pieces, leaving, finishes and adjustments'),
  pieces: z.record(text, measured).describe('Per goal, autonomous included'),
  finishes: z.record(text, measured).describe('Achieved, per finish'),
  waiting: z.record(text, measured).describe('Seconds in queues and at empty sources, per source and goal'),
  waited: measured.describe('The same at all places together'),
  defending: measured.describe('Seconds spent marking'),
})
robot satisfies z.ZodType<RobotReport>

export const matchReport = z
  .strictObject({
    replicates: z.number(),
    seed: z.number(),
    score: both(measured),
    margin: measured,
    win: chance,
    tie: chance,
    loss: chance,
    rankingPoints: both(measured),
    autoPoints: both(measured),
    finishPoints: both(measured),
    bonuses: z.record(text, both(chance)),
    robots: z.array(robot).describe('Ours, then theirs'),
    heldSeconds: z.record(text, both(measured)),
    heldSecondsPerPiece: z
      .record(text, both(z.strictObject({ average: estimated, marginal: estimated })))
      .describe('Seconds of holding that a piece brought, and that one piece more would bring'),
    distributions: z.strictObject({ ours: distribution, theirs: distribution, margin: distribution }),
  })
  .meta({ id: 'MatchReport' })
matchReport satisfies z.ZodType<MatchReport>

export const matchAnswer = z.strictObject({ ...matchReport.shape, warnings }).meta({ id: 'MatchAnswer' })
matchAnswer satisfies z.ZodType<MatchReport & { warnings: Warning[] }>
