import * as z from 'zod'
import type { HardwareLink, Mechanism } from '../../model/documents/mechanism.ts'
import { id, name } from './primitives.ts'
import {
  cylinderRequest,
  driveRequest,
  pivotRequest,
  rollersRequest,
  shotRequest,
  wheelRequest,
} from './timings/index.ts'

const named = { id, name }

export const mechanism = z
  .discriminatedUnion('calculator', [
    z.strictObject({ ...named, calculator: z.literal('drive'), input: driveRequest }),
    z.strictObject({ ...named, calculator: z.literal('rollers'), input: rollersRequest }),
    z.strictObject({ ...named, calculator: z.literal('pivot'), input: pivotRequest }),
    z.strictObject({ ...named, calculator: z.literal('wheel'), input: wheelRequest }),
    z.strictObject({ ...named, calculator: z.literal('shot'), input: shotRequest }),
    z.strictObject({ ...named, calculator: z.literal('cylinder'), input: cylinderRequest }),
  ])
  .meta({ id: 'Mechanism', description: 'A mechanism whose time comes from its hardware; parts are copied into it' })
mechanism satisfies z.ZodType<Mechanism>

export const hardwareLink = z
  .strictObject({
    mechanism: id.describe('Id of a mechanism of the robot'),
    follows: z.boolean().describe('Whether the numbers follow it; if not, it stands beside them'),
  })
  .meta({ id: 'HardwareLink', description: 'Where the numbers come from' })
hardwareLink satisfies z.ZodType<HardwareLink>
