import * as z from 'zod'
import type { DriveAnswer } from '../../../model/timing/answers.ts'
import type { DriveInput } from '../../../model/timing/inputs.ts'
import { list, measure } from '../primitives.ts'
import { answerOf, curve, number, seconds } from './answer.ts'
import { electric } from './supply.ts'
import { uncertain } from './uncertain.ts'

export const driveRequest = z
  .strictObject({
    ...electric,
    wheelDiameter: uncertain(0.01, 1, 'm'),
    mass: uncertain(0.5, 1000, 'Of the robot, everything on it included (kg)'),
    friction: uncertain(0.02, 3, 'Tyre on floor'),
    drivenShare: uncertain(0.05, 1, 'Share of the weight that stands on driven wheels'),
    rollingResistance: uncertain(0, 2000, 'Force that has to be overcome at any speed (N)'),
    brakingLimit: measure(0.05, 100, 'Greatest deceleration that is used (m/s²); null: what the tyres hold').nullable(),
    distance: uncertain(0.01, 200, 'm'),
    stops: z.boolean().describe('Whether it stands at the end, or passes'),
    legs: list(
      z.strictObject({ length: measure(0.01, 200, 'm'), weight: measure(0.001, 1e6, 'How often it is driven') }),
      1,
      100,
      'The game’s legs, for the trapezoid that fits them best',
    ).optional(),
  })
  .meta({ id: 'DriveTiming', description: 'A drive: motors, wheels, mass and a distance' })
driveRequest satisfies z.ZodType<DriveInput>

/** Where source and motors are pushed hardest. */
export const electricQuantities = {
  motorCurrent: number('Highest of one motor (A)'),
  sourceCurrent: number('Highest out of the source (A)'),
  sourceVoltage: number('Lowest of the source (V)'),
}

export const motion = {
  time: curve('s'),
  speed: curve('m/s'),
  distance: curve('m'),
  current: curve('Of one motor (A)'),
}

const trapezoid = z
  .strictObject({
    topSpeed: number('m/s'),
    acceleration: number('m/s²'),
    deceleration: number('m/s²'),
    rms: number('Root mean square of the legs’ differences (s)'),
    worst: number('Greatest difference of a leg (s)'),
    legs: z.array(z.strictObject({ length: number('m'), seconds, fitted: seconds })),
  })
  .meta({ id: 'DriveTrapezoid', description: 'Numbers for a robot’s drive that come closest over the legs' })

export const driveAnswer = answerOf({
  id: 'DriveTimingAnswer',
  quantities: {
    ...electricQuantities,
    topSpeed: number('Where the force only just overcomes the resistance (m/s)'),
    peakSpeed: number('Highest on this way (m/s)'),
    acceleration: number('At the start (m/s²)'),
    limitedBy: z.enum(['traction', 'currentLimit', 'motor']).describe('What limits the acceleration at the start'),
    kneeSpeed: number('Speed up to which that limit holds (m/s)'),
    deceleration: number('m/s²'),
    tractionForce: number('What the tyres hold (N)'),
    launchForce: number('What the motors could push with at the start (N)'),
    runningSeconds: number('Until braking begins (s)'),
    brakingSeconds: number('From then on (s)'),
    trapezoid: trapezoid.nullable().describe('Null where no legs are given'),
  },
  curves: motion,
})
driveAnswer satisfies z.ZodType<DriveAnswer>
