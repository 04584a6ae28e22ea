import * as z from 'zod'
import type { Action, ExpectedPoints, PlanReport, Worth } from '../../../model/plan/types.ts'
import { game } from '../game.ts'
import { option } from '../option.ts'
import { list } from '../primitives.ts'

export const planRequest = z.strictObject({
  game,
  option,
  step: z
    .union([z.literal(0.1), z.literal(0.25)])
    .optional()
    .describe('Grid of time (s); 0.1 where it is not given'),
  with: list(z.enum(['call', 'worth']), 0, 2, 'What is asked for besides').optional(),
})

const text = z.string()
const points = z.number().describe('Points')
const timeLeft = z.number().describe('Time left (s)')
const pairs = z.array(z.tuple([z.number(), z.number()]))

const action = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('collect'), source: text, spot: text, load: z.number() }),
    z.strictObject({ kind: z.literal('score'), goal: text, entry: z.number(), spot: text }),
    z.strictObject({ kind: z.literal('finish'), finish: text, spot: text }),
    z.strictObject({ kind: z.literal('stop') }),
  ])
  .meta({ id: 'Action' })
action satisfies z.ZodType<Action>

const node = z.strictObject({
  at: text.describe('Id of a start or spot'),
  load: z.strictObject({ piece: text, count: z.number() }).nullable(),
})

const expected = z.strictObject({
  total: points,
  autonomous: points,
  adjust: points,
  goals: z.record(text, z.strictObject({ pieces: z.number(), points })).describe('Teleop only'),
  finishes: z.record(text, z.strictObject({ attempts: z.number(), points })),
})
expected satisfies z.ZodType<ExpectedPoints>

const band = z.strictObject({ from: timeLeft, to: timeLeft, action }).describe('Best action for from > t ≥ to')

const leaveBy = z.strictObject({
  node,
  finish: text,
  from: timeLeft,
  to: timeLeft,
  latest: timeLeft.describe('Least time left at which leaving is worth at most half a point less (s)'),
  forgone: points.describe('Value of the best collecting or scoring at that time (points)'),
})

const worth = z.strictObject({
  leg: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('collect'), source: text }),
    z.strictObject({ kind: z.literal('score'), goal: text, entry: z.number() }),
    z.strictObject({ kind: z.literal('finish'), finish: text }),
  ]),
  stage: text,
  pointsPerSecond: z.number(),
})
worth satisfies z.ZodType<Worth>

export const planAnswer = z
  .strictObject({
    expected,
    sd: points,
    p10: points,
    p50: points,
    p90: points,
    distribution: pairs.describe('[points, probability], rising'),
    pieces: z.record(text, pairs).describe('[pieces, probability] per goal, teleop only'),
    policy: z.array(z.strictObject({ node, bands: z.array(band) })),
    leaveBy: z.array(leaveBy),
    first: z.array(z.strictObject({ action, value: points })),
    call: z
      .strictObject({ at: timeLeft, points, early3: points, late3: points })
      .nullable()
      .optional()
      .describe('The one time to call; null under skip'),
    worth: z.array(worth).optional(),
  })
  .meta({ id: 'PlanAnswer' })
planAnswer satisfies z.ZodType<PlanReport>
