import * as z from 'zod'
import type { Briefing } from '../../model/briefing/index.ts'
import { matchReport } from '../contracts/compute/match.ts'
import { id } from '../contracts/index.ts'
import { alliance, hash, planBody, team } from '../contracts/scouting/index.ts'
import { behind, kept } from '../estimates/atOnce.ts'

export const briefingRequest = z.strictObject({
  event: id.describe('Id of the event'),
  match: id.describe('Id of the match'),
  alliance: alliance.optional().describe('Whose plan it is; where nothing is said that of our own team, else red'),
  kept,
})

const mean = z.strictObject({ mean: z.number(), standardError: z.number() })
const difference = z
  .strictObject({ win: mean.describe('Chance to win, a tie as half'), points: mean.describe('Points of our lead') })
  .meta({ id: 'BriefingDifference', description: 'What one way brings more than another, on the same luck' })
const point = z.tuple([z.number(), z.number()])
const call = z
  .strictObject({
    at: z.number().nullable().describe('Time left (s); null: going is worth less than playing on'),
    early3: mean.describe('Points that going three seconds earlier costs'),
    late3: mean.describe('The same of three seconds later'),
  })
  .nullable()
  .describe('When to go for its finish; null: it has none')

const jobs = z.array(
  z.strictObject({
    team,
    start: id,
    sources: z.array(id),
    goals: z.array(id).describe('Most pieces first'),
    finish: id.nullable(),
    call,
    lane: z.array(point).describe('Its way over the field in our own coordinates (m)'),
  }),
)

const threat = z.strictObject({
  team,
  goal: id.nullable(),
  pieces: z.number(),
  gains: difference,
  markers: z.array(z.strictObject({ team, gains: difference })),
  marker: team.nullable().describe('Who should stand in its way; null: nobody'),
})

const fact = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('absent'), team, changes: z.boolean(), difference }),
  z.strictObject({
    kind: z.literal('number'),
    team,
    what: z.enum(['pace', 'hits', 'finish']),
    side: z.enum(['above', 'below']),
    value: z.number(),
    believed: z.number(),
    difference: mean,
  }),
])

export const briefing = z
  .strictObject({
    replicates: z.int(),
    seed: z.int(),
    slowing: z.number().describe('By which a slowed opponent takes longer for each trip'),
    jobs: jobs.describe('By position'),
    opponents: z.array(z.strictObject({ team, goals: z.array(id), finish: id.nullable() })),
    report: matchReport.describe('Of the plan; ours is our own alliance'),
    lineUps: z
      .array(z.strictObject({ goals: z.array(z.array(id)), win: mean, loses: difference.nullable() }))
      .describe('The best, and what the runner-up loses'),
    considered: z.strictObject({ candidates: z.int(), played: z.int() }),
    slowings: z.array(z.strictObject({ team, gains: difference })).describe('What slowing each opponent is worth'),
    threat,
    contention: z.array(z.strictObject({ place: id, team, seconds: mean })).describe('Where ours wait'),
    facts: z.array(fact).describe('What would change the plan'),
  })
  .meta({ id: 'Briefing', description: 'All that is said before a match' })
briefing satisfies z.ZodType<Briefing>

export const briefingAnswer = z.strictObject({
  match: id,
  alliance,
  records: z.int().describe('Observations behind it'),
  neverSeen: z.array(team).describe('Of these nothing was seen: they play like the event’s average'),
  from: hash.describe('SHA-256 of what it was made from'),
  madeAt: z.string().describe('Until then it was all that was known (ISO 8601)'),
  behind,
  briefing,
})

export const agreeRequest = z.strictObject({
  event: id.describe('Id of the event'),
  match: id.describe('Id of the match'),
  from: hash.describe('Of the briefing'),
  body: planBody,
})
