import * as z from 'zod'
import { id } from '../contracts/index.ts'
import { team } from '../contracts/scouting/index.ts'

export const brokenRequest = z.strictObject({ event: id.describe('Id of the event'), team })

export const brokenAnswer = z
  .array(
    z.strictObject({
      match: id,
      absent: z.boolean().describe('It did not come'),
      stoppedAt: z.number().nullable().describe('Elapsed seconds at which it stopped for good'),
      stops: z
        .array(z.strictObject({ from: z.number(), to: z.number().nullable() }))
        .describe('Elapsed seconds; null: it did not run again'),
      lostSeconds: z.number().describe('Seconds lost without being stopped'),
      dropped: z.int().describe('Pieces dropped'),
      notes: z.array(z.string()).describe('What scouts wrote'),
    }),
  )
  .describe('Matches of which anything like that was recorded, latest first')
