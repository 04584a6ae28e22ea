import * as z from 'zod'
import { guess, id, written } from '../contracts/index.ts'

export const code = written(/^[A-Z0-9]{6}$/, (got) => ({ code: 'notACode', parts: { got } })).describe(
  'Code of the round',
)

/** What a device or a browser makes up for itself; the sentence does not repeat it. */
const secret = written(/^[a-z0-9]{16,64}$/, () => ({ code: 'notASecret', parts: {} }))

/** Made by the device itself and known to it alone, so that nobody else corrects its guess. */
export const device = secret.describe('Made up at random by the device, which keeps it to itself')

/** Made by the browser that opens a round, and kept there. */
const closingKey = secret.optional()

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
  anyway: z.boolean().optional().describe('Close it without that key, which is then said wherever the round is shown'),
})

export const removeRequest = z.strictObject({
  code,
  undo: z.boolean().optional().describe('Brings it back instead'),
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
    keyed: z.boolean().describe('Whether it was opened with a key, without which it is closed only by saying “anyway”'),
    closedAnyway: z.boolean().describe('Whether it was closed without that key'),
    broughtAt: z.string().nullable().describe('ISO 8601: when it came in from a file; null where it was held here'),
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
