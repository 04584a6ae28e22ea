import * as z from 'zod'
import type { AgreedPlan } from '../../../model/briefing/agreed.ts'
import { id, list, measure, points, probability } from '../primitives.ts'
import { hash, storedMoment } from './forecast.ts'
import { alliance, team } from './shared.ts'

const call = measure(0, 600, 'Time left at which it goes for its finish (s); null: nothing was called').nullable()

/** What is agreed for a match, without its note. */
export const planBody = z
  .strictObject({
    alliance,
    jobs: list(
      z.strictObject({
        team,
        start: id,
        sources: list(id, 0, 20, 'Ids of sources'),
        goals: list(id, 0, 20, 'Ids of goals, most pieces first'),
        finish: id.nullable(),
        call,
      }),
      0,
      3,
      'By position',
    ),
    threat: z.strictObject({ team, marker: team.nullable().describe('Who stands in its way; null: nobody') }),
    win: probability.describe('Chance to win, a tie as half'),
    scores: z.strictObject({ ours: points, theirs: points }).describe('Expected'),
    instead: z
      .strictObject({
        goals: list(list(id, 0, 20, 'Ids of goals, most pieces first'), 0, 3, 'By position'),
        own: probability.describe('Chance to win with the line-up of our own, as it was compared: without calls'),
        win: probability.describe('The same with the computed one'),
      })
      .optional()
      .describe('The computed line-up, where one of our own was agreed on'),
    note: z.string().max(2000),
  })
  .meta({ id: 'PlanBody', description: 'What is agreed for a match' })

export const agreedPlan = z
  .strictObject({
    id: hash.describe('SHA-256 of the canonical JSON of all else'),
    match: id,
    agreedAt: storedMoment,
    person: id.nullable().describe('Id of the person'),
    from: hash.describe('SHA-256 of what the briefing was made from'),
    body: planBody,
  })
  .meta({ id: 'AgreedPlan', description: 'A plan that was agreed before its match; the newest is in force' })
agreedPlan satisfies z.ZodType<AgreedPlan>
