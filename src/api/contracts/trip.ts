import * as z from 'zod'
import type { CollectTrip, FinishTrip, ScoreEntry, Stage } from '../../model/documents/types.ts'
import { duration } from './duration.ts'
import { hardwareLink } from './mechanism.ts'
import { id, list, name, probability } from './primitives.ts'

const stage = z
  .strictObject({
    id,
    name,
    duration,
    after: list(id, 0, 40, 'Ids of the stages that must end first; `drive` is built in'),
    each: z.boolean().optional().describe('Done once per piece of the load'),
    hardware: hardwareLink.optional(),
  })
  .meta({ id: 'Stage' })
stage satisfies z.ZodType<Stage>

const stages = list(stage, 0, 40, 'Network of stages')
const whole = duration.describe('The leg’s whole time, driving included (s)')

/** Both forms of a trip with the same further fields. */
function trip<Shape extends z.ZodRawShape>(further: Shape) {
  return z.union([z.strictObject({ stages, ...further }), z.strictObject({ whole, ...further })])
}

export const collectTrip = trip({
  success: probability.describe('Chance that a try succeeds'),
  retry: duration.nullable().describe('What a failed try costs (s)'),
}).meta({ id: 'CollectTrip' })
collectTrip satisfies z.ZodType<CollectTrip>

export const scoreEntry = trip({
  spots: z.union([z.literal('any'), list(id, 1, 30, 'Ids of the goal’s spots')]),
  success: probability.describe('Chance that a piece counts'),
}).meta({ id: 'ScoreEntry' })
scoreEntry satisfies z.ZodType<ScoreEntry>

export const finishTrip = trip({
  success: probability,
  otherwise: id.nullable().describe('Lesser finish that a failure still earns'),
}).meta({ id: 'FinishTrip' })
finishTrip satisfies z.ZodType<FinishTrip>
