import * as z from 'zod'
import type { ShotAnswer } from '../../../model/timing/answers.ts'
import type { ShotInput } from '../../../model/timing/inputs.ts'
import { measure } from '../primitives.ts'
import { answerOf, curve, number } from './answer.ts'
import { uncertain } from './uncertain.ts'

export const shotRequest = z
  .strictObject({
    releaseHeight: uncertain(0, 10, 'Of the piece’s centre when it leaves (m)'),
    angle: uncertain(-1.5, 1.55, 'Above level (rad)'),
    targetHeight: uncertain(0, 20, 'Of the middle of the opening (m)'),
    distance: uncertain(0.02, 60, 'Level, from release to the middle of the opening (m)'),
    pieceMass: uncertain(0.001, 20, 'kg'),
    pieceDiameter: uncertain(0.005, 2, 'm'),
    dragCoefficient: uncertain(0, 3, '0: without drag'),
    airDensity: uncertain(0, 2, 'kg/m³'),
    wheelDiameter: uncertain(0.005, 2, 'm'),
    transfer: uncertain(
      0.05,
      1.5,
      'Exit speed over the wheel’s surface speed: about 0.5 for one wheel against a fixed hood, 1 between two',
    ),
    exitSpeed: uncertain(0.1, 100, 'm/s; null: the one that meets the middle').nullable(),
    opening: z
      .strictObject({
        size: measure(0.005, 10, 'Clear size (m)'),
        lies: z.enum(['upright', 'level']).describe('An upright gap, or a level ring'),
      })
      .nullable()
      .describe('What it has to go through; null: not looked at'),
    speedError: measure(0, 0.5, 'How far the exit speed can be off, as a share'),
    angleError: measure(0, 0.5, 'How far the angle can be off (rad)'),
  })
  .meta({ id: 'ShotTiming', description: 'A piece in the air' })
shotRequest satisfies z.ZodType<ShotInput>

export const shotAnswer = answerOf({
  id: 'ShotTimingAnswer',
  quantities: {
    exitSpeed: number('m/s'),
    vacuumSpeed: number('Without drag, in closed form (m/s)'),
    leastSpeed: number('That reaches the middle at any angle, without drag (m/s)'),
    leastAngle: number('At which that is (rad)'),
    wheelSpeed: number('rad/s'),
    wheelSurfaceSpeed: number('m/s'),
    apex: number('Highest point above the floor (m)'),
    arrivalSpeed: number('At the opening (m/s)'),
    arrivalAngle: number('At the opening, above level (rad); below 0 it falls'),
    miss: number('How far the middle is missed (m); above 0: too high, for a level ring too far'),
    margin: number('What is left between piece and rim at the worst of the errors (m); below 0: it hits').nullable(),
  },
  curves: { time: curve('s'), distance: curve('Level, from release (m)'), height: curve('Above the floor (m)') },
})
shotAnswer satisfies z.ZodType<ShotAnswer>
