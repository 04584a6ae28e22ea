import * as z from 'zod'
import type { Clock, Game } from '../../model/documents/types.ts'
import { field, start } from './field.ts'
import { finish, goal, source } from './places.ts'
import { clockTime, format, id, list, measure, name, points } from './primitives.ts'
import { bonus, ranking, set } from './standing.ts'

const clock = z
  .strictObject({
    auto: clockTime(0, 60, 'Autonomous (s)'),
    pause: clockTime(0, 60, 'Nothing moves or pays (s)'),
    teleop: clockTime(0, 600, 'Driven period (s)'),
    endgame: clockTime(0, 600, 'Last part of teleop (s)'),
  })
  .meta({ id: 'Clock', description: 'Multiples of 0.1 s' })
clock satisfies z.ZodType<Clock>

export const game = z
  .strictObject({
    format,
    id,
    name,
    pieces: list(z.strictObject({ id, name }), 1, 20, 'Kinds of piece'),
    clock,
    field,
    starts: list(start, 1, 20, 'Starts'),
    sources: list(source, 0, 20, 'Where pieces are collected'),
    goals: list(goal, 0, 20, 'Where pieces are scored'),
    finishes: list(finish, 0, 20, 'What pays at the end'),
    leave: z.strictObject({ points }).nullable().describe('For moving off the start in autonomous'),
    sets: list(set, 0, 20, 'Paid as often as all needs are met'),
    bonuses: list(bonus, 0, 20, 'Bonuses'),
    ranking,
    fouls: z.strictObject({ minor: points, major: points }).describe('Points to the opponent'),
    limits: z.strictObject({ mass: measure(0, 10_000, 'kg'), cost: measure(0, 1e9, 'Currency units') }).optional(),
  })
  .meta({ id: 'Game', description: 'The season’s rules and field' })
game satisfies z.ZodType<Game>
