import * as z from 'zod'
import type { CylinderAnswer } from '../../../model/timing/answers.ts'
import type { CylinderInput } from '../../../model/timing/inputs.ts'
import { answerOf, curve, number } from './answer.ts'
import { pneumatic } from './supply.ts'
import { uncertain } from './uncertain.ts'

export const cylinderRequest = z
  .strictObject({
    ...pneumatic,
    direction: z.enum(['extend', 'retract']),
    mass: uncertain(0.001, 500, 'That all cylinders together move (kg)'),
    load: uncertain(-20_000, 20_000, 'Against the movement, weight included; below 0 it helps (N)'),
    stop: uncertain(0.001, 3, 'Travel at which a hard stop ends the movement (m); null: the full stroke').nullable(),
  })
  .meta({ id: 'CylinderTiming', description: 'A stroke of cylinders' })
cylinderRequest satisfies z.ZodType<CylinderInput>

export const cylinderAnswer = answerOf({
  id: 'CylinderTimingAnswer',
  quantities: {
    force: number('All cylinders at rest, at full pressure against the room’s, without friction (N)'),
    travel: number('With the stop (m)'),
    freeAir: number('One stroke of all cylinders, at the room’s pressure, dead volumes included (m³)'),
    endSpeed: number('When it arrives (m/s)'),
    endEnergy: number('That goes into the end (J)'),
    peakSpeed: number('m/s'),
    flowSpeed: number('At which choked exhaust lets the piston go, in closed form (m/s)'),
    startsAt: number('When it begins to move (s)'),
    supplyChoked: z.boolean().describe('Flow in is choked in the middle of the travel'),
    exhaustChoked: z.boolean().describe('Flow out is choked in the middle of the travel'),
  },
  curves: {
    time: curve('s'),
    distance: curve('m'),
    speed: curve('m/s'),
    pressure: curve('That pushes (Pa, absolute)'),
    backPressure: curve('That resists (Pa, absolute)'),
  },
})
cylinderAnswer satisfies z.ZodType<CylinderAnswer>
