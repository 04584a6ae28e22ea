import * as z from 'zod'
import { partFaults } from '../../../model/timing/partFaults.ts'
import type { Compressor, Cylinder, Motor, Part, Tank, Valve, Wheel } from '../../../model/timing/parts.ts'
import { disagree } from '../agree.ts'
import { above, id, list, measure, name } from '../primitives.ts'

/** Highest pressure anywhere (Pa, absolute): 20 bar. */
export const highestPressure = 2_000_000

/** The numbers of a part must agree with each other. */
function agrees(part: Part, context: z.core.$RefinementCtx<Part>): void {
  for (const { path, rule, bound, got } of partFaults(part))
    disagree(context, path, { code: rule, parts: { bound, got } })
}

const provenance = {
  id,
  name,
  source: z.string().max(500).describe('Where the numbers come from: data sheet, measurement, guess'),
  date: z.iso.date().describe('Day on which the numbers were taken over, ISO 8601'),
}

export const motor = z
  .strictObject({
    kind: z.literal('motor'),
    ...provenance,
    nominalVoltage: measure(1, 100, 'Voltage at which the other numbers hold (V)'),
    freeSpeed: measure(1, 10_000, 'Without a load (rad/s)'),
    freeCurrent: measure(0, 1000, 'Without a load (A)'),
    stallTorque: measure(0.001, 1000, 'N·m'),
    stallCurrent: measure(0.01, 5000, 'A'),
    rotorInertia: measure(0, 1, 'Of the rotor about its own axis (kg·m²); not given: neglected').optional(),
  })
  .superRefine(agrees)
  .meta({ id: 'Motor', description: 'A direct-current motor; torque falls in a straight line with speed' })
motor satisfies z.ZodType<Motor>

export const cylinder = z
  .strictObject({
    kind: z.literal('cylinder'),
    ...provenance,
    bore: measure(0.002, 0.5, 'Diameter of the piston (m)'),
    rod: measure(0.0005, 0.45, 'Diameter of the rod (m)'),
    stroke: measure(0.001, 3, 'Full travel (m)'),
  })
  .superRefine(agrees)
  .meta({ id: 'Cylinder', description: 'A double-acting cylinder with its rod on one side' })
cylinder satisfies z.ZodType<Cylinder>

export const valve = z
  .strictObject({
    kind: z.literal('valve'),
    ...provenance,
    conductance: measure(
      1e-11,
      1e-6,
      'Sonic conductance by ISO 6358 (m³/(s·Pa)); 1 dm³/(s·bar) is 1e-8. Fittings and tube included',
    ),
    criticalRatio: measure(0.01, 0.99, 'Critical pressure ratio by ISO 6358: at or below it the flow is choked'),
  })
  .meta({ id: 'Valve', description: 'A valve with its fittings and tube as one flow path' })
valve satisfies z.ZodType<Valve>

export const compressor = z
  .strictObject({
    kind: z.literal('compressor'),
    ...provenance,
    flow: list(
      z.tuple([measure(0, highestPressure, 'Pa, absolute'), measure(0, 1, 'm³/s')]),
      2,
      50,
      '[pressure that it works against (Pa, absolute), free air at 100 kPa (m³/s)]; straight between, no flow above',
    ),
  })
  .superRefine(agrees)
  .meta({ id: 'Compressor', description: 'A compressor by its flow against pressure' })
compressor satisfies z.ZodType<Compressor>

export const tank = z
  .strictObject({
    kind: z.literal('tank'),
    ...provenance,
    volume: measure(1e-6, 1, 'm³'),
    highestPressure: above(0, highestPressure, 'What it may hold by its maker (Pa, absolute)'),
  })
  .meta({ id: 'Tank', description: 'A tank for stored air' })
tank satisfies z.ZodType<Tank>

export const wheel = z
  .strictObject({
    kind: z.literal('wheel'),
    ...provenance,
    diameter: measure(0.005, 1, 'm'),
    mass: measure(0, 50, 'kg'),
    inertia: measure(0, 10, 'About its axis (kg·m²)'),
    friction: measure(0, 3, 'Of its tread on the floor, or on a piece'),
  })
  .meta({ id: 'Wheel', description: 'A wheel or roller' })
wheel satisfies z.ZodType<Wheel>

export const part = z
  .discriminatedUnion('kind', [motor, cylinder, valve, compressor, tank, wheel])
  .meta({ id: 'Part', description: 'A bought part with its numbers, source and date' })
part satisfies z.ZodType<Part>
