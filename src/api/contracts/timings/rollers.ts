import * as z from 'zod'
import type { RollersAnswer } from '../../../model/timing/answers.ts'
import type { RollersInput } from '../../../model/timing/inputs.ts'
import { answerOf, number } from './answer.ts'
import { electricQuantities, motion } from './drive.ts'
import { electric } from './supply.ts'
import { uncertain } from './uncertain.ts'

export const rollersRequest = z
  .strictObject({
    ...electric,
    rollerDiameter: uncertain(0.005, 0.5, 'm'),
    travel: uncertain(0.005, 5, 'How far the piece is drawn in (m)'),
    pieceMass: uncertain(0.001, 20, 'kg'),
    grip: uncertain(0.01, 2000, 'Force at which the rollers slip on the piece: friction times squeeze (N)'),
    drag: uncertain(0, 2000, 'Force that holds the piece back while it is drawn in (N)'),
    slip: uncertain(0, 0.9, 'Share of the surface speed that the piece never gets'),
    driveSpeed: uncertain(0, 20, 'Of the robot while it collects (m/s)'),
  })
  .meta({ id: 'RollersTiming', description: 'Rollers that draw a piece in' })
rollersRequest satisfies z.ZodType<RollersInput>

export const rollersAnswer = answerOf({
  id: 'RollersTimingAnswer',
  quantities: {
    ...electricQuantities,
    surfaceSpeed: number('Of the rollers with nothing in them (m/s)'),
    pieceSpeed: number('Of the piece when it is in (m/s)'),
    ratio: number('Surface speed over drive speed; null where the robot stands').nullable(),
    stallForce: number('At the rollers’ surface, all motors at a standstill (N)'),
    slidingDistance: number('How far the piece goes before it follows the rollers (m)'),
  },
  curves: motion,
})
rollersAnswer satisfies z.ZodType<RollersAnswer>
