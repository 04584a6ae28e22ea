import * as z from 'zod'
import type { Route } from '../../../model/field/types.ts'
import { game } from '../game.ts'
import { id } from '../primitives.ts'
import { robot } from '../robot.ts'

export const travelRequest = z.strictObject({
  game,
  robot,
  from: id.describe('Id of a start or spot'),
  to: id.describe('Id of a start or spot'),
})

export const travelAnswer = z
  .strictObject({
    length: z.number().describe('Length of the shortest path of the robot’s centre (m), exact'),
    seconds: z.number().describe('From rest to rest (s), exact, without pace'),
    path: z.array(z.tuple([z.number(), z.number()])).describe('For drawing: arcs sampled to 1 cm'),
  })
  .meta({ id: 'TravelAnswer' })
travelAnswer satisfies z.ZodType<Route>
