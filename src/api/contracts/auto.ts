import * as z from 'zod'
import type { Auto, Load } from '../../model/documents/types.ts'
import { count, id, list, measure, name, probability } from './primitives.ts'

export const load = z
  .strictObject({ piece: id, count: count(1, 100, 'Pieces in hand') })
  .meta({ id: 'Load', description: 'One kind of piece in hand' })
load satisfies z.ZodType<Load>

const step = z.strictObject({
  at: measure(0, 60, 'Seconds since the match’s start'),
  goal: id,
  piece: id,
  count: count(1, 50, 'Pieces'),
  success: probability,
  needsPrevious: z.boolean(),
})

const coordinate = measure(-1000, 1000, 'm')

export const auto = z
  .strictObject({
    id,
    name,
    starts: list(id, 1, 20, 'Ids of the starts that it can begin from'),
    steps: list(step, 0, 50, 'What is scored, in order'),
    leaves: probability.describe('Chance of moving off the start'),
    endsAt: id.describe('Id of the start or spot where the routine ends'),
    holding: load.nullable(),
    path: list(z.tuple([measure(0, 60, 's'), coordinate, coordinate]), 0, 2000, '[t, x, y] for drawing').optional(),
    takes: list(z.strictObject({ source: id, count: count(1, 50, 'Pieces') }), 0, 20, 'What it takes').optional(),
  })
  .meta({ id: 'Auto', description: 'An autonomous routine' })
auto satisfies z.ZodType<Auto>
