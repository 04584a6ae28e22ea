import * as z from 'zod'
import type { Bonus, Metric, Ranking } from '../../model/documents/types.ts'
import { byId, count, id, list, measure, name, points } from './primitives.ts'

const goals = list(id, 1, 20, 'Ids of goals')

const metric = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('pieces'), goals }),
    z.strictObject({ kind: z.literal('autoPoints') }),
    z.strictObject({ kind: z.literal('finishPoints') }),
    z.strictObject({ kind: z.literal('finished'), finishes: list(id, 1, 20, 'Ids of finishes') }),
    z.strictObject({ kind: z.literal('heldSeconds'), goal: id }),
  ])
  .meta({ id: 'Metric' })
metric satisfies z.ZodType<Metric>

const rankingPoints = measure(-100, 100, 'Ranking points')

const threshold = measure(0, 100_000, 'In the metric’s unit')

export const bonus = z
  .strictObject({
    id,
    name,
    rankingPoints,
    points,
    metric,
    atLeast: z.union([threshold, byId(threshold, 20, 'Per level of event')]),
    scope: z.enum(['own', 'both']),
  })
  .meta({ id: 'Bonus' })
bonus satisfies z.ZodType<Bonus>

export const set = z.strictObject({
  id,
  name,
  needs: byId(count(1, 1000, 'Pieces'), 20, 'Pieces per goal; paid as often as all are met'),
  points,
})

const tieBreaker = z.union([z.enum(['score', 'autoPoints', 'finishPoints']), z.strictObject({ pieces: goals })])

export const ranking = z
  .strictObject({
    win: rankingPoints,
    tie: rankingPoints,
    loss: rankingPoints,
    per: z.enum(['match', 'total']),
    // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
    then: list(tieBreaker, 0, 10, 'Tie-breakers in order'),
  })
  .meta({ id: 'Ranking' })
ranking satisfies z.ZodType<Ranking>
