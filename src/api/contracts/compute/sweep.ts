import * as z from 'zod'
import type { Sweep, SweepAnswer, SweptMatch } from '../../../model/timing/index.ts'
import { apart } from '../agree.ts'
import { game } from '../game.ts'
import { option } from '../option.ts'
import { count, list, measure } from '../primitives.ts'
import { number, remark, seconds } from '../timings/answer.ts'
import { driveRequest, electricQuantities } from '../timings/drive.ts'
import { motorPivotRequest } from '../timings/pivot.ts'
import { rollersRequest } from '../timings/rollers.ts'
import { wheelRequest } from '../timings/wheel.ts'

const reduction = (what: string) => measure(0.05, 5000, what)

/** All reductions with all numbers of motors: some seconds of the slowest calculator on a small machine. */
const mostPoints = 1000

const asked = {
  reductions: z
    .strictObject({
      low: reduction('Least reduction'),
      high: reduction('Greatest reduction'),
      count: count(2, 500, 'How many, in equal ratios, both ends among them'),
    })
    .superRefine(apart),
  motors: list(count(1, 16, 'Motors that share the load'), 1, 16, 'Numbers of motors to try, each once'),
  limits: z
    .strictObject({
      motorCurrent: measure(0, 10_000, 'Most of one motor (A)'),
      sourceCurrent: measure(0, 10_000, 'Most out of the source (A)'),
      sourceVoltage: measure(0, 100, 'Least of the source (V)'),
    })
    .partial()
    .optional()
    .describe('What may not be exceeded; what is not given is not looked at'),
  match: z
    .strictObject({
      game,
      option,
      mechanism: z.string().describe('Of the option’s robot, of this calculator; taken with the input given here'),
    })
    .optional()
    .describe('Whose expected points are asked for too; they need some seconds'),
}

/** The input’s own gearing is not looked at; a reduction with a spread is searched at its likely value. */
export const sweepRequest = z
  .discriminatedUnion('calculator', [
    z.strictObject({ calculator: z.literal('drive'), input: driveRequest, ...asked }),
    z.strictObject({ calculator: z.literal('rollers'), input: rollersRequest, ...asked }),
    z.strictObject({ calculator: z.literal('pivot'), input: motorPivotRequest, ...asked }),
    z.strictObject({ calculator: z.literal('wheel'), input: wheelRequest, ...asked }),
  ])
  .superRefine(({ reductions, motors }, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message })
    const twice = motors.findIndex((each, index) => motors.indexOf(each) < index)
    if (twice >= 0) refuse(['motors', twice], `motors must name each number once, got ${motors[twice]} again`)
    const points = reductions.count * motors.length
    if (points <= mostPoints) return
    const message = `count times the numbers of motors must be at most ${mostPoints}, got ${points}`
    refuse(['reductions', 'count'], message)
  })
  .meta({ id: 'GearingSweep', description: 'A mechanism, and the reductions and numbers of motors to try' })
sweepRequest satisfies z.ZodType<Sweep & { match?: SweptMatch }>

const sweepPoint = z
  .strictObject({
    reduction: number('Turns of the motor for one turn of what it drives'),
    motors: number('Motors that share the load'),
    seconds: seconds.nullable().describe('At the likely values (s); null where it can not be done'),
    why: remark.nullable().describe('Why not'),
    loads: z.strictObject(electricQuantities).nullable().describe('Null where it can not be done'),
    within: z.boolean().describe('Whether it keeps to the limits'),
  })
  .meta({ id: 'GearingSweepPoint' })

export const sweepAnswer = z
  .strictObject({
    points: z.array(sweepPoint).describe('Number of motors by number of motors, reductions rising'),
    best: sweepPoint.nullable().describe('The quickest within the limits; null: none'),
    flat: z
      .strictObject({
        low: number('Reduction'),
        high: number('Reduction'),
        share: number('How much longer than the best it takes in between, at most (share of 1)'),
      })
      .nullable()
      .describe('How flat the optimum is, with as many motors as the best has'),
    match: z
      .strictObject({
        own: number('With the input’s own gearing').nullable(),
        points: z
          .array(
            z
              .strictObject({
                points: number('A match'),
                off: number('By about how much a line between plans may miss; 0 where it was planned'),
              })
              .nullable(),
          )
          .describe('Expected points, as many as there are points of the sweep; null where it can not be done'),
      })
      .optional()
      .describe('Where a match is given'),
  })
  .meta({ id: 'GearingSweepAnswer' })
sweepAnswer satisfies z.ZodType<SweepAnswer>
