import * as z from 'zod'
import type { KeptLine, PickLine, SelectionRules } from '../../../model/picks/index.ts'
import { count, id, list } from '../primitives.ts'
import { mostTeams } from './event.ts'
import { storedMoment } from './forecast.ts'
import { team, uuid } from './shared.ts'

export const selectionRules = z
  .strictObject({
    alliances: count(2, 32, 'Alliances'),
    size: count(2, 6, 'Robots of an alliance, its captain among them'),
    serpentine: z.boolean().describe('Later rounds go back and forth; else each begins with the first alliance'),
    captainsInvitable: z.boolean().describe('In the first round captains further down may be invited'),
    afterDeclining: z
      .enum(['captain', 'out'])
      .describe('Whoever declined is not invited again, and may still become a captain, or may not'),
  })
  .meta({ id: 'SelectionRules', description: 'How alliances of the playoffs are formed' })
selectionRules satisfies z.ZodType<SelectionRules>

const selectionStep = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.enum(['accepts', 'declines', 'withdraws']), team }),
    z.strictObject({ kind: z.literal('joins'), team, alliance: count(1, 32, 'Number of the alliance') }),
  ])
  .meta({ id: 'SelectionStep', description: 'What was called out' })

export const reason = z.string().min(1).max(500)

const begins = z.strictObject({
  kind: z.literal('begins'),
  rules: selectionRules,
  seeds: list(team, 2, mostTeams, 'All teams, best seeded first'),
})
const called = z.strictObject({ kind: z.literal('called'), step: selectionStep })
const undoes = z.strictObject({ kind: z.literal('undoes'), line: uuid.describe('Id of the last line in force') })
const aside = z.strictObject({
  kind: z.literal('aside'),
  team,
  reason: reason.nullable().describe('Why it is not invited; null: it may be again'),
})
const order = z.strictObject({
  kind: z.literal('order'),
  teams: list(team, 0, mostTeams, 'Our own order, best first; none: the computed one'),
})

const lineId = uuid.describe('Made up by whoever writes it, so that it can be sent twice')

/** What was called out, on its way in. */
export const calledLine = z
  .strictObject({ id: lineId, line: z.discriminatedUnion('kind', [begins, called, undoes]) })
  .meta({ id: 'CalledLine', description: 'A line of what was called out' })

/** A note of leads, on its way in. */
export const notedLine = z
  .strictObject({ id: lineId, line: z.discriminatedUnion('kind', [aside, order]) })
  .meta({ id: 'NotedLine', description: 'A note of leads to the selection' })

const line = z
  .discriminatedUnion('kind', [begins, called, undoes, aside, order])
  .meta({ id: 'PickLine', description: 'A line of the log of a selection' })
line satisfies z.ZodType<PickLine>

export const keptLine = z
  .strictObject({ id: lineId, line, at: storedMoment, person: id.nullable().describe('Id of the person') })
  .meta({ id: 'KeptLine', description: 'A line with when and by whom it was written' })
keptLine satisfies z.ZodType<KeptLine>
