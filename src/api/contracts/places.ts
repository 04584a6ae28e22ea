import * as z from 'zod'
import type { Award, Finish, Goal, Source } from '../../model/documents/types.ts'
import { spots } from './field.ts'
import { above, count, id, list, measure, name, points } from './primitives.ts'

const slots = count(1, 20, 'Robots of one alliance at work here at once')

export const source = z
  .strictObject({
    id,
    name,
    piece: id.describe('Id of the kind of piece'),
    spots,
    slots,
    stock: count(0, 10_000, 'Pieces at the match’s start').nullable().describe('Null: never empty'),
    restock: z.strictObject({ every: above(0, 600, 's'), size: count(1, 1000, 'Pieces') }).nullable(),
    shared: z.boolean().describe('Both alliances draw on one stock'),
  })
  .meta({ id: 'Source' })
source satisfies z.ZodType<Source>

const perSecond = measure(-1000, 1000, 'Points per second')

const award = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('each'), auto: points, teleop: points }),
    z.strictObject({ kind: z.literal('hold'), autoPerSecond: perSecond, teleopPerSecond: perSecond }),
  ])
  .meta({ id: 'Award', description: 'What a piece pays: at once, or each second to the alliance with more pieces' })
award satisfies z.ZodType<Award>

export const goal = z
  .strictObject({
    id,
    name,
    accepts: list(id, 1, 20, 'Ids of the kinds of piece that count here'),
    spots,
    slots,
    capacity: count(0, 10_000, 'Pieces that fit').nullable().describe('Null: without limit'),
    award,
  })
  .meta({ id: 'Goal' })
goal satisfies z.ZodType<Goal>

export const finish = z.strictObject({ id, name, spots, slots, points }).meta({ id: 'Finish' })
finish satisfies z.ZodType<Finish>
