import * as z from 'zod'
import type { FinishMode, Option, Role } from '../../model/documents/types.ts'
import { byId, clockTime, format, id, list, measure, name, points } from './primitives.ts'
import { robot } from './robot.ts'

export const role = z
  .strictObject({
    sources: list(id, 0, 20, 'Ids of sources'),
    goals: list(id, 0, 20, 'Ids of goals'),
    finishes: list(id, 0, 20, 'Ids of finishes'),
    defend: z
      .strictObject({
        mark: z.union([z.literal(0), z.literal(1), z.literal(2)]).describe('Which opponent'),
        from: measure(0, 600, 'Time left (s)'),
        until: measure(0, 600, 'Time left (s)'),
      })
      .nullable(),
  })
  .meta({ id: 'Role' })
role satisfies z.ZodType<Role>

const finishMode = z
  .discriminatedUnion('mode', [
    z.strictObject({ mode: z.literal('best') }),
    z.strictObject({ mode: z.literal('skip') }),
    z.strictObject({ mode: z.literal('always'), at: clockTime(0, 600, 'Time left at which to finish (s)') }),
  ])
  .meta({ id: 'FinishMode' })
finishMode satisfies z.ZodType<FinishMode>

/** All of an option but its robot. */
export const play = {
  format,
  id,
  name,
  start: id.describe('Id of the start'),
  auto: id.nullable().describe('Id of the robot’s autonomous routine'),
  role,
  finish: finishMode,
  holdSeconds: byId(measure(0, 600, 's'), 20, 'Seconds of holding that one piece buys, per hold goal'),
  adjust: list(
    z.strictObject({ label: z.string().max(200), points, rankingPoints: measure(-100, 100, 'Ranking points') }),
    0,
    30,
    'Rules that can not be said otherwise',
  ),
}

export const option = z
  .strictObject({ ...play, robot })
  .meta({ id: 'Option', description: 'A robot with a way to play it' })
option satisfies z.ZodType<Option>
