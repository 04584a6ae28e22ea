import * as z from 'zod'
import type { LegReport, LegRequest } from '../../../model/leg/types.ts'
import { game } from '../game.ts'
import { count, id } from '../primitives.ts'
import { robot } from '../robot.ts'

const spot = id.describe('Id of the spot where the leg ends')
const from = id.describe('Id of the start or spot where it begins')
const load = count(1, 100, 'Pieces')

const leg = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('collect'), source: id, spot, from, load }),
    z.strictObject({
      kind: z.literal('score'),
      goal: id,
      entry: count(0, 9, 'Which of the robot’s ways to score there, from 0'),
      spot,
      from,
      piece: id,
      load,
    }),
    z.strictObject({ kind: z.literal('finish'), finish: id, spot, from }),
  ])
  .meta({ id: 'Leg', description: 'One trip from a spot to a spot' })
leg satisfies z.ZodType<LegRequest>

export const legRequest = z.strictObject({ game, robot, leg })

const seconds = z.number().describe('s')

const stage = z.strictObject({
  id: z.string(),
  mean: seconds.describe('All pieces of the load together (s)'),
  earliestStart: seconds,
  earliestFinish: seconds,
  latestStart: seconds,
  latestFinish: seconds,
  float: seconds.describe('What the stage can be late without delaying the leg, at mean durations (s)'),
  criticality: z.number().describe('Share of draws in which it lies on a longest path'),
})

export const legAnswer = z
  .strictObject({
    mean: seconds,
    sd: seconds,
    p10: seconds,
    p50: seconds,
    p90: seconds,
    distribution: z.array(z.tuple([z.number(), z.number()])).describe('[seconds, probability]'),
    pieces: z
      .array(z.strictObject({ mean: seconds }))
      .optional()
      .describe('When each piece counts'),
    drive: z.strictObject({ length: z.number(), seconds }).nullable().describe('Null for a leg given whole'),
    stages: z.array(stage),
  })
  .meta({ id: 'LegAnswer' })
legAnswer satisfies z.ZodType<LegReport>
