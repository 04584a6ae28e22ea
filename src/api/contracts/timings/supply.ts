import * as z from 'zod'
import type { Electric, Pneumatic } from '../../../model/timing/inputs.ts'
import { count, measure } from '../primitives.ts'
import { cylinder, highestPressure, motor, valve } from './parts.ts'
import { uncertain } from './uncertain.ts'

/** Motors behind one gearbox, fed by one source. */
export const electric = {
  motor,
  motors: count(1, 16, 'Motors that share the load'),
  reduction: uncertain(0.05, 5000, 'Turns of the motor for one turn of what it drives'),
  efficiency: uncertain(0.05, 1, 'Share of the torque that reaches the output'),
  currentLimit: measure(1, 1000, 'Per motor (A); null: none').nullable(),
  voltage: uncertain(1, 100, 'Of the source without load (V)'),
  sourceResistance: uncertain(0, 10, 'Of battery and wiring, as all these motors together see it (Ω)'),
  lowestVoltage: measure(
    0,
    100,
    'Voltage below which controllers cut back (V), only to warn; null: not watched',
  ).nullable(),
}
z.strictObject(electric) satisfies z.ZodType<Electric>

export const ambient = uncertain(50_000, 110_000, 'Of the room (Pa, absolute)')

/** Cylinders side by side with their valves. */
export const pneumatic = {
  cylinder,
  cylinders: count(1, 16, 'Cylinders side by side, each with its valve'),
  supply: valve.describe('Flow path into each cylinder'),
  exhaust: valve.describe('Flow path out of each cylinder'),
  pressure: uncertain(100_000, highestPressure, 'Regulated, before the valve (Pa, absolute)'),
  ambient,
  temperature: uncertain(250, 330, 'Of the air (K)'),
  cylinderFriction: uncertain(0, 5000, 'Of one cylinder’s seals and guides (N)'),
  deadVolume: uncertain(1e-7, 0.01, 'On either side of one piston at its end, tube included (m³)'),
  farSide: z
    .enum(['charged', 'vented'])
    .describe('What is on the far side of the piston before: the pressure of the stroke before, or the room’s'),
}
z.strictObject(pneumatic) satisfies z.ZodType<Pneumatic>
