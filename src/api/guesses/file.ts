import * as z from 'zod'
import { mostDevices, mostRounds } from '../../store/index.ts'
import type { KeptRound } from '../../store/types.ts'
import { format, guess, id, list, name, rule } from '../contracts/index.ts'
import { say } from '../sentences.ts'
import { code, leg } from './contracts.ts'

const moment = z.iso.datetime({ offset: true })

const kept = z
  .strictObject({
    code,
    way: id.describe('Id of the way to play on the sheet'),
    leg,
    about: z
      .strictObject({
        way: name,
        places: list(name, 0, 20, 'Where the leg leads to'),
        load: z.int().min(1).max(100).describe('Pieces per trip'),
      })
      .describe('What was asked, in words'),
    openedAt: moment.describe('ISO 8601'),
    closedAt: moment.describe('ISO 8601'),
    guesses: list(guess, 0, mostDevices, 'One per device, by size'),
  })
  .superRefine((round, context) => {
    if (Date.parse(round.openedAt) <= Date.parse(round.closedAt)) return
    const said = say({ code: 'closedBeforeOpened', parts: { code: round.code } })
    context.addIssue({ code: 'custom', path: ['closedAt'], message: said.message, params: { said: said.said } })
  })
  .meta({ id: 'KeptRound' })
kept satisfies z.ZodType<KeptRound>

const rounds = z
  .array(kept)
  .max(mostRounds)
  .refine(
    (all) => twiceIn(all) === undefined,
    rule(({ input }) => ({ code: 'codeTwice', parts: { code: String(twiceIn(input as KeptRound[])) } })),
  )
  .describe('Closed rounds, oldest first')

/** The first code that stands there a second time. */
function twiceIn(all: readonly KeptRound[]): string | undefined {
  const codes = all.map((each) => each.code)
  return codes.find((each, index) => codes.indexOf(each) < index)
}

/** The closed rounds of a sheet as a file; what is open is in no file, because its guesses are hidden. */
export const roundsFile = z
  .strictObject({
    format,
    sheet: z.strictObject({ id, name }).describe('The quick sheet that they were held for'),
    rounds,
  })
  .meta({ id: 'GuessRoundsFile', description: 'Closed rounds of blind guesses of a quick sheet' })

export const fileOf = z.strictObject({ sheet: id.describe('Id of the quick sheet') })

export const bringRequest = z.strictObject({
  sheet: id.describe('Id of the quick sheet that they come to'),
  file: roundsFile,
})

export const brought = z.strictObject({
  added: z.number().describe('Rounds that were added'),
  already: z.number().describe('Rounds of the file that were here before'),
})

/** The form of the file as a JSON Schema (draft 2020-12), made from the contract that is checked. */
export const roundsSchema: object = {
  ...z.toJSONSchema(roundsFile, { target: 'draft-2020-12', io: 'input' }),
  $id: 'urn:cyclewright:schema:guess-rounds:1',
  title: 'Closed rounds of blind guesses of a quick sheet',
}
