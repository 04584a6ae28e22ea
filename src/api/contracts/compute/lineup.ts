import * as z from 'zod'
import type { LineupReport } from '../../../model/match/lineup/types.ts'
import { game } from '../game.ts'
import { option, role } from '../option.ts'
import { id, list, measure } from '../primitives.ts'
import { seed } from './compare.ts'
import { type Warning, warnings } from './warning.ts'

const three = (what: string) => list(option, 3, 3, what)
const roles = list(role, 1, 20, 'Roles that this robot may take; one where it is settled')

export const lineupRequest = z.strictObject({
  game,
  level: id.optional().describe('The event’s level, where a bonus asks for different amounts by level'),
  ours: three('Our robots; the roles of their options are replaced'),
  theirs: list(three('One setting of the rivals'), 1, 24, 'Settings in which the rivals may come'),
  weights: list(
    measure(0, 1e6, 'How likely, relative to the others'),
    1,
    24,
    'One per setting of the rivals',
  ).optional(),
  roles: z.tuple([roles, roles, roles]),
  seed,
  objective: z.enum(['win', 'rankingPoints']),
})

const mean = z.strictObject({ mean: z.number(), standardError: z.number() })
const value = z.strictObject({ roles: z.array(role).describe('Of our three robots'), value: mean })

export const lineupAnswer = z
  .strictObject({
    best: value,
    runnerUp: value.nullable().describe('The best that plays otherwise; null where none does'),
    loses: mean.nullable().describe('What the runner-up loses against the best, by the same luck'),
    worst: z
      .strictObject({ rival: z.number(), value: z.number() })
      .describe('The setting against which the best line-up does worst, by its number from 0'),
    replicates: z.number().describe('Matches of each of the last two'),
    seed: z.number(),
    candidates: z.number().describe('Line-ups in all'),
    simulated: z.number().describe('Of these, how many the closed form left to be played'),
    warnings,
  })
  .meta({ id: 'LineupAnswer' })
lineupAnswer satisfies z.ZodType<LineupReport & { warnings: Warning[] }>
