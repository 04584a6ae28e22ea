import * as z from 'zod'
import type { AirPlan } from '../../../model/timing/air/airPlan.ts'
import { game } from '../game.ts'
import { option } from '../option.ts'
import { timedLeg } from '../timing.ts'
import { airAnswer } from '../timings/air.ts'
import { curve, number, remark, seconds } from '../timings/answer.ts'

export const airPlanRequest = z.strictObject({
  game,
  option: option.describe('Its robot has stored air'),
})

const points = (description: string) => z.number().describe(description)
const timeLeft = (what: string) => seconds.nullable().describe(`Time left at which ${what} (s); null: it lasts`)

const slowed = z
  .strictObject({
    leg: timedLeg,
    stage: z.string(),
    name: z.string(),
    mechanism: z.string(),
    seconds: seconds.describe('Mean with the working pressure (s)'),
    slowed: seconds.describe('Mean once it is lost (s)'),
    by: z
      .enum(['calculator', 'ratio', 'factor'])
      .describe('Its mechanism’s time at the low pressure; its own time, longer in that measure; or the factor given'),
  })
  .meta({ id: 'SlowedStage' })

const budget = z
  .strictObject({
    collect: timedLeg.nullable(),
    score: timedLeg,
    cycleSeconds: seconds.describe('Teleop over the expected score trips (s)'),
    answer: airAnswer,
  })
  .meta({ id: 'AirBudget', description: 'The same cycle again and again: the trips that the plan does most' })

export const airPlanAnswer = z
  .discriminatedUnion('possible', [
    z.strictObject({
      possible: z.literal(true),
      curves: z
        .strictObject({
          timeLeft: curve('s, falling'),
          pressure: curve('Of the tanks (Pa, absolute)'),
          pressureAdiabatic: curve('The cautious bound (Pa, absolute)'),
        })
        .describe('Arrays of equal length'),
      lostAt: timeLeft('the working pressure is lost'),
      lostAtAdiabatic: timeLeft('it is lost by the cautious bound'),
      lostWithOneTankMore: timeLeft('it is lost with one tank more'),
      points: z.strictObject({
        always: points('With air that always lasts: those of the plan'),
        withThis: points('With this air'),
        withOneTankMore: points('With one tank more of the same kind'),
      }),
      trips: z
        .array(
          z.strictObject({
            leg: timedLeg,
            expected: number('Trips in teleop'),
            freeAir: number('That each takes, at the room’s pressure (m³)'),
          }),
        )
        .describe('What takes air, most first'),
      autonomous: number('Free air that it takes (m³)'),
      slowed: z.array(slowed).describe('Stages that are slower once the pressure is lost'),
      budget: budget.nullable().describe('Null where no trip that the plan does takes air'),
      warnings: z.array(remark),
    }),
    z.strictObject({ possible: z.literal(false), why: remark, warnings: z.array(remark) }),
  ])
  .meta({ id: 'AirPlanAnswer' })
airPlanAnswer satisfies z.ZodType<AirPlan>
