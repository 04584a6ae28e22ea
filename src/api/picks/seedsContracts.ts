import * as z from 'zod'
import { id } from '../contracts/index.ts'
import { count } from '../contracts/primitives.ts'
import { team } from '../contracts/scouting/index.ts'

export const ofSeeds = z.strictObject({
  event: id.describe('Id of the event'),
  team: team.describe('Whose coming matches are looked into'),
})

export const lotsRequest = z.strictObject({
  event: id.describe('Id of the event'),
  most: count(1, 100, 'Matches to come that are simulated in one go').optional(),
})

export const lotsAnswer = z
  .strictObject({ done: z.int(), total: z.int() })
  .meta({ id: 'SeedsProgress', description: 'Matches to come that are simulated, of how many' })

const places = z.strictObject({ places: z.number(), error: z.number() }).describe('Places gained in expected rank')

export const seedsAnswer = z
  .strictObject({
    counted: z.int().describe('Matches that count in the ranking so far'),
    coming: z.int().describe('Matches to come'),
    records: z.int().describe('Observations behind it'),
    report: z.strictObject({
      seasons: z.int(),
      seed: z.int(),
      teams: z
        .array(
          z.strictObject({
            team,
            expected: z.number().describe('Expected final rank, from 1'),
            error: z.number(),
            ranks: z.array(z.number()).describe('Chance of each rank, from the first'),
          }),
        )
        .describe('By expected rank'),
      ours: z.array(
        z.strictObject({
          match: id,
          win: z.number(),
          tie: z.number(),
          worth: places.describe('Winning instead of losing, bonuses as they come'),
          bonuses: z.array(
            z.strictObject({
              bonus: id,
              chance: z.number(),
              worth: places.describe('With it instead of without'),
              perWin: z
                .number()
                .nullable()
                .describe(
                  'One percentage point of its chance is worth so many of the win’s; null: winning brings none',
                ),
            }),
          ),
        }),
      ),
    }),
  })
  .meta({ id: 'Seeds', description: 'Where teams end after the matches to come, and what each of ours is worth' })
