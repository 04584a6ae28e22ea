import * as z from 'zod'
import { guess, id } from '../contracts/index.ts'

export const code = z
  .string()
  .regex(/^[A-Z0-9]{6}$/, {
    error: ({ input }) =>
      `a code has six letters and figures, such as K7M3PX, got ${JSON.stringify(input).slice(0, 40)}`,
  })
  .describe('Code of the round')

/** Made by the device itself and known to it alone, so that nobody else corrects its guess. */
export const device = z
  .string()
  .regex(/^[a-z0-9]{16,64}$/, {
    error: () => 'device must be 16 to 64 small letters and figures, made up at random by the device',
  })
  .describe('Made up at random by the device, which keeps it to itself')

/** Made by the browser that opens a round, and kept there. */
const closingKey = z
  .string()
  .regex(/^[a-z0-9]{16,64}$/, {
    error: () => 'closingKey must be 16 to 64 small letters and figures, made up at random by who opens the round',
  })
  .optional()

export const leg = z.enum(['collect', 'score', 'finish'])

export const openRequest = z.strictObject({
  sheet: id.describe('Id of the quick sheet'),
  way: id.describe('Id of the way to play on it'),
  leg,
  closingKey: closingKey.describe('Only who brings it again can close the round; without one everybody can'),
})

export const closeRequest = z.strictObject({
  code,
  closingKey: closingKey.describe('The key that the round was opened with'),
})

const about = z.strictObject({
  way: z.string(),
  places: z.array(z.string()).describe('Where the leg leads to'),
  load: z.number().describe('Pieces per trip'),
})

export const round = z
  .strictObject({
    code: z.string(),
    sheet: z.string(),
    way: z.string(),
    leg,
    about,
    openedAt: z.string().describe('ISO 8601'),
    closedAt: z.string().nullable().describe('ISO 8601; null while guesses are taken'),
    count: z.number().describe('Devices that have given a guess'),
    arrived: z.number().describe('Devices that have opened it to guess, those that have guessed among them'),
    keyed: z.boolean().describe('Whether only who opened it can close it'),
  })
  .meta({ id: 'GuessRound' })

export const opened = z.strictObject({
  ...round.shape,
  guesses: z.array(guess).nullable().describe('Null while the round is open; by size, without the devices'),
})

export const given = z.strictObject({
  count: z.number().describe('Devices that have given a guess'),
  corrected: z.boolean().describe('Whether this device had guessed before'),
})

export const reach = z.strictObject({
  onlyHere: z.boolean().describe('The server listens on this machine alone, so that no phone can reach it'),
  addresses: z.array(z.string()).describe('Addresses under which this machine may be reached in its network'),
})

export { guess }
