import * as z from 'zod'
import type { PivotAnswer } from '../../../model/timing/answers.ts'
import type { MotorPivotInput, PivotInput } from '../../../model/timing/inputs.ts'
import { apart } from '../agree.ts'
import { measure } from '../primitives.ts'
import { answerOf, curve, number } from './answer.ts'
import { electric, pneumatic } from './supply.ts'
import { uncertain } from './uncertain.ts'

/** Angles: up to a turn and a half to either side (rad). */
const most = 9.5

const swing = {
  inertia: uncertain(1e-6, 1000, 'About the pivot, what it carries included (kg·m²)'),
  mass: uncertain(0.001, 500, 'kg'),
  centre: uncertain(0, 5, 'From the pivot to the centre of mass (m)'),
  from: uncertain(-most, most, 'Angle at the start, above level (rad)'),
  to: uncertain(-most, most, 'Angle at the end, above level (rad)'),
  friction: uncertain(0, 5000, 'Torque of friction in the pivot (N·m)'),
  stops: z
    .strictObject({ low: measure(-most, most, 'rad'), high: measure(-most, most, 'rad') })
    .superRefine(apart)
    .nullable()
    .describe('Angles at which something is in the way; null: nothing'),
}

const hinge = measure(-5, 5, 'm')

export const motorPivotRequest = z.strictObject({
  by: z.literal('motor'),
  ...electric,
  ...swing,
  end: z
    .enum(['brake', 'stop'])
    .describe('brake: comes to rest by itself, with at most the torque of the way up; stop: runs against a stop'),
})
motorPivotRequest satisfies z.ZodType<MotorPivotInput>

export const pivotRequest = z
  .discriminatedUnion('by', [
    motorPivotRequest,
    z.strictObject({
      by: z.literal('cylinder'),
      ...pneumatic,
      ...swing,
      frame: z.tuple([hinge, hinge]).describe('Hinge of the fixed end, from the pivot: forward and up (m)'),
      radius: uncertain(0.005, 3, 'From the pivot to the rod’s hinge on the arm (m)'),
      offset: uncertain(-most, most, 'Of that hinge from the arm’s own direction (rad)'),
      closedLength: uncertain(0.005, 5, 'From hinge to hinge with the rod drawn in (m)'),
    }),
  ])
  .meta({ id: 'PivotTiming', description: 'An arm turned by motors, or by a cylinder on a lever' })
pivotRequest satisfies z.ZodType<PivotInput>

export const pivotAnswer = answerOf({
  id: 'PivotTimingAnswer',
  quantities: {
    gravityTorque: number('Of gravity at its greatest on the way (N·m)'),
    startTorque: number('That is there at the start, friction and gravity not taken off (N·m)'),
    peakSpeed: number('Greatest on the way (rad/s)'),
    endSpeed: number('When it arrives (rad/s)'),
    endEnergy: number('That goes into the stop (J)'),
    brakingFrom: number('Where braking begins (rad); null where it does not').nullable(),
    motorCurrent: number('Highest of one motor (A); null for a cylinder').nullable(),
    holdingCurrent: number('Of one motor that holds the end angle (A); null for a cylinder').nullable(),
    sourceCurrent: number('Highest out of the source (A); null for a cylinder').nullable(),
    sourceVoltage: number('Lowest of the source (V); null for a cylinder').nullable(),
    strokeUsed: number('Part of the cylinder’s stroke that is used (m); null for motors').nullable(),
    freeAir: number('Free air at the room’s pressure (m³); null for motors').nullable(),
  },
  curves: {
    time: curve('s'),
    angle: curve('rad'),
    speed: curve('rad/s'),
    current: curve('Of one motor (A); empty for a cylinder'),
    pressure: curve('That pushes (Pa, absolute); empty for motors'),
    backPressure: curve('That resists (Pa, absolute); empty for motors'),
  },
})
pivotAnswer satisfies z.ZodType<PivotAnswer>
