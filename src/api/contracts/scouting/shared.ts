import * as z from 'zod'
import { alliances, phases, slotStates } from '../../../model/scouting/types.ts'
import { count, id, measure, text } from '../primitives.ts'
import { written } from '../sentences.ts'

/** A team's number as people say it: letters and digits, because some events let a team bring a second robot ('90001B'). */
export const team = written(/^[A-Za-z0-9-]{1,12}$/, (got) => ({ code: 'notATeam', parts: { got } })).describe(
  'Team: up to 12 letters, digits or hyphens',
)

/** Made where the record is made (RFC 9562): version 7 begins with the time, others are taken too. */
export const uuid = written(/^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, (got) => ({
  code: 'notAUuid',
  parts: { got },
})).describe('UUID in small letters (RFC 9562), version 7 where we make it')

export const moment = written(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/, (got) => ({
  code: 'notAMomentWithOffset',
  parts: { got },
})).describe('Date and time with its offset (ISO 8601)')

export const day = written(/^\d{4}-\d{2}-\d{2}$/, (got) => ({ code: 'notADate', parts: { got } })).describe(
  'Date (ISO 8601)',
)

/** Longest match that can be recorded, pauses and a recording that begins early included (s). */
export const longestMatch = 1200

export const elapsed = measure(-60, longestMatch, 'Seconds since the match’s start')
export const duringMatch = measure(0, longestMatch, 's')
export const pieces = count(0, 1000, 'Pieces')
export const phase = z.enum(phases).describe('Phase of the event')
export const alliance = z.enum(alliances).describe('Alliance')
export const position = z.union([z.literal(1), z.literal(2), z.literal(3)]).describe('Position in the alliance')
export const slotState = z.enum(slotStates)
export const note = text.max(2000).describe('Note')
export const scout = id.describe('Who recorded it')
export const device = id.describe('Device that it was recorded on')
export const sequence = count(0, 1_000_000_000, 'Counts the records of a device')

export const seat = z.strictObject({ alliance, position }).meta({ id: 'Seat', description: 'A place in a match' })
