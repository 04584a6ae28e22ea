import * as z from 'zod'
import { game } from './contracts/index.ts'
import { roundsSchema } from './guesses/file.ts'
import { openProcedure, router } from './trpc.ts'

/**
 * The form of a game's file as a JSON Schema (draft 2020-12), made from the contract that is checked. What a schema can not
 * say (ids that must be known, outlines that cross themselves) is checked when a game is saved.
 */
export const gameSchema: object = {
  ...z.toJSONSchema(game, { target: 'draft-2020-12', io: 'input' }),
  $id: 'urn:cyclewright:schema:game:1',
  title: 'A game: a season’s rules and its field',
}

const jsonSchema = z
  .looseObject({ $schema: z.string(), $id: z.string() })
  .meta({ id: 'JsonSchema', description: 'A JSON Schema, draft 2020-12' })

export const schemas = router({
  game: openProcedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/schemas/game.json',
        summary: 'The JSON Schema of a game’s file',
        answer: jsonSchema,
      },
    })
    .query(() => gameSchema),

  guessRounds: openProcedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/schemas/guess-rounds.json',
        summary: 'The JSON Schema of a file of rounds of guesses',
        answer: jsonSchema,
      },
    })
    .query(() => roundsSchema),
})
