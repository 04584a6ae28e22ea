import * as z from 'zod'
import type { SeasonReport } from '../../../model/match/scores/types.ts'
import { game } from '../game.ts'
import { option } from '../option.ts'
import { count, id, list, measure } from '../primitives.ts'
import { seed } from './compare.ts'

const three = (whose: string) => list(id, 3, 3, `${whose} teams, positions 1 to 3`)
const teamOf = z.strictObject({
  team: id,
  draws: list(option, 1, 20, 'How it plays: one option, or one per draw of what is not known; all teams as many'),
})
const match = z.strictObject({ id, ours: three('Our'), theirs: three('Their') })

export const seasonRequest = z.strictObject({
  game,
  level: id.optional().describe('The event’s level, where a bonus asks for different amounts by level'),
  teams: list(teamOf, 6, 80, 'Who plays, with a robot and a way to play it'),
  matches: list(match, 1, 120, 'Who meets whom'),
  seasons: count(1, 20_000, 'Seasons to draw; 10000 where not given').optional(),
  seed,
  replicates: count(500, 20_000, 'Most simulated matches per match; 20000 where not given').optional(),
  precision: measure(0.002, 0.1, 'Standard error of win + ½ tie to stop at before; 0.0035 where not given').optional(),
})

const both = <T extends z.ZodType>(of: T) => z.strictObject({ ours: of, theirs: of })
const points = z.strictObject({ mean: z.number(), sd: z.number().describe('Of one match') })

const matchForecast = z.strictObject({
  id: z.string(),
  replicates: z.number().describe('Simulated matches that it rests on'),
  score: both(points),
  win: z.number(),
  tie: z.number(),
  loss: z.number(),
  standardError: z.number().describe('Of win + ½ tie, by the luck of the simulated matches'),
  rankingPoints: both(z.number()).describe('Expected, of one robot of the alliance'),
})

const teamForecast = z.strictObject({
  team: z.string(),
  matches: z.number(),
  rankingPoints: z
    .strictObject({ mean: z.number(), sd: z.number(), p10: z.number(), p50: z.number(), p90: z.number() })
    .describe('Of all its matches together, over the seasons'),
})

export const seasonAnswer = z
  .strictObject({
    seasons: z.number(),
    seed: z.number(),
    matches: z.array(matchForecast),
    teams: z.array(teamForecast),
    error: z
      .strictObject({
        total: z.number(),
        structure: z.number().describe('What of it is not the luck of the simulated matches'),
      })
      .describe('Of the chances of win + ½ tie against the simulation, root mean square over the matches'),
  })
  .meta({ id: 'SeasonAnswer' })
seasonAnswer satisfies z.ZodType<SeasonReport>
