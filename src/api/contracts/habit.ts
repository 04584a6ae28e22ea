import * as z from 'zod'
import type { Habit, HabitDraw } from '../../model/documents/habit.ts'
import { byId, list, measure, probability } from './primitives.ts'

const goals = byId(probability, 20, 'Share of its trips per goal')
const pieces = z
  .record(z.string().regex(/^[1-9]\d{0,2}$/), probability)
  .describe('Share of its trips per number of pieces, from 1 on')
const departs = measure(0, 600, 'Time left at which it leaves for a finish (s)')

const draw = z.strictObject({
  time: measure(0.05, 20, 'Factor on all of its times').optional(),
  form: measure(1, 3, 'Geometric standard deviation of its form').optional(),
  goals: goals.optional(),
  pieces: pieces.optional(),
  departs: departs.optional(),
  success: byId(probability, 20, 'Success per piece, per goal').optional(),
  finish: byId(probability, 20, 'Success per finish').optional(),
  absent: probability.optional().describe('Chance of not playing'),
  stops: probability.optional().describe('Chance of stopping for good'),
})
draw satisfies z.ZodType<HabitDraw>

export const habit = z
  .strictObject({
    goals,
    pieces,
    departs,
    unhindered: byId(
      measure(0.05, 1, 'Factor'),
      60,
      'Per place: takes the waiting out of observed whole times',
    ).optional(),
    draws: list(draw, 1, 2000, 'What its numbers may be instead, each as likely: a match meets one of them').optional(),
  })
  .meta({ id: 'Habit', description: 'How an observed robot plays: by shares, not by a plan' })
habit satisfies z.ZodType<Habit>
