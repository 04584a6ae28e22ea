import * as z from 'zod'
import type { Field, Spot, Start } from '../../model/documents/types.ts'
import { id, list, measure, name, point } from './primitives.ts'

export const spot = z
  .strictObject({ id, at: point })
  .meta({ id: 'Spot', description: 'Where the robot’s centre stands' })
spot satisfies z.ZodType<Spot>

export const spots = list(spot, 1, 30, 'Spots of the place')

export const start = z
  .strictObject({ id, name, at: point })
  .meta({ id: 'Start', description: 'Where a robot may stand when the match begins' })
start satisfies z.ZodType<Start>

const obstacle = z
  .strictObject({ id, name, outline: list(point, 3, 200, 'Corners in order, not crossing itself') })
  .meta({ id: 'Obstacle' })

export const field = z
  .strictObject({
    length: measure(1, 200, 'm'),
    width: measure(1, 200, 'm'),
    clearance: measure(0, 5, 'Room kept between robot and obstacle (m)'),
    symmetry: z.enum(['mirror', 'rotate']).describe('How the other alliance sees the field'),
    obstacles: list(obstacle, 0, 60, 'Must map onto each other under the symmetry'),
  })
  .meta({ id: 'Field' })
field satisfies z.ZodType<Field>
