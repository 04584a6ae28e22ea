import * as z from 'zod'
import type { WheelAnswer } from '../../../model/timing/answers.ts'
import type { WheelInput } from '../../../model/timing/inputs.ts'
import { disagree } from '../agree.ts'
import { answerOf, curve, number, seconds } from './answer.ts'
import { electricQuantities } from './drive.ts'
import { electric } from './supply.ts'
import { uncertain } from './uncertain.ts'

export const wheelRequest = z
  .strictObject({
    ...electric,
    stage: z.enum(['spinUp', 'recovery']).describe('What is timed'),
    inertia: uncertain(1e-7, 100, 'Of everything that turns with the wheel, without the rotors (kg·m²)'),
    drag: uncertain(0, 1000, 'Torque that has to be overcome at any speed (N·m)'),
    wheelDiameter: uncertain(0.005, 2, 'm'),
    from: uncertain(0, 10_000, 'Speed before spinning up (rad/s)'),
    target: uncertain(0.1, 10_000, 'Speed to shoot at (rad/s)'),
    shot: z
      .strictObject({
        pieceMass: uncertain(0.001, 20, 'kg'),
        exitSpeed: uncertain(0.01, 100, 'm/s'),
        transfer: uncertain(0.05, 1, 'Share of the energy taken from the wheel that the piece gets'),
      })
      .nullable()
      .describe('What one shot takes; needed for a recovery'),
  })
  .superRefine(({ stage, shot }, context) => {
    if (stage === 'spinUp' || shot !== null) return
    disagree(context, ['shot'], { code: 'shotMissing', parts: {} })
  })
  .meta({ id: 'WheelTiming', description: 'A wheel that stores the energy of a shot' })
wheelRequest satisfies z.ZodType<WheelInput>

export const wheelAnswer = answerOf({
  id: 'WheelTimingAnswer',
  quantities: {
    ...electricQuantities,
    freeSpeed: number('Where the torque only just overcomes the drag (rad/s)'),
    kneeSpeed: number('Speed up to which the current limit holds the torque constant (rad/s)'),
    timeConstant: number('Of the last part (s)'),
    surfaceSpeed: number('At the target speed (m/s)'),
    energy: number('At the target speed (J)'),
    speedAfterShot: number('rad/s; null without a shot').nullable(),
    speedLost: number('Share of the speed that a shot takes; null without a shot').nullable(),
    recoverySeconds: seconds.nullable(),
    spinUpSeconds: seconds,
  },
  curves: { time: curve('s'), speed: curve('rad/s'), current: curve('Of one motor (A)') },
})
wheelAnswer satisfies z.ZodType<WheelAnswer>
