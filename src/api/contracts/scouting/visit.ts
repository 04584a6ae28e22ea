import * as z from 'zod'
import type { Change, Photo, PitVisit, Ranking } from '../../../model/scouting/types.ts'
import { above, byId, id, list, longest, measure } from '../primitives.ts'
import { written } from '../sentences.ts'
import { moment, note, scout, team, uuid } from './shared.ts'

/** Photos of one visit, and the size of one (bytes). */
export const mostPhotos = 4
export const mostPhotoBytes = 200_000

export const pitVisit = z
  .strictObject({
    team,
    at: moment,
    claims: z.strictObject({
      goals: byId(measure(0, 1000, 'Pieces a match'), 20, 'Pieces a match by goal').optional(),
      cycle: above(0, longest, 's').optional(),
      finish: id.optional(),
      routines: list(id, 0, 20, 'Autonomous routines').optional(),
      size: z.string().max(200).optional().describe('Size in the team’s own words'),
      mass: measure(0, 1000, 'kg').optional(),
    }),
    photos: list(uuid, 0, mostPhotos, 'Ids of photos'),
    note: note.optional(),
  })
  .meta({ id: 'PitVisit', description: 'What a team says of itself' })
pitVisit satisfies z.ZodType<PitVisit>

export const ranking = z
  .strictObject({
    match: id,
    scout,
    by: z.enum(['driving', 'defence']),
    order: list(team, 2, 6, 'Best first').refine(
      (teams) => new Set(teams).size === teams.length,
      'order names a team twice',
    ),
  })
  .meta({ id: 'ExpertRanking', description: 'An expert’s order of robots of one match' })
ranking satisfies z.ZodType<Ranking>

export const change = z
  .strictObject({
    team,
    afterMatch: id.nullable().describe('Id of a match; null: before its first'),
    note: note.optional(),
  })
  .meta({ id: 'Change', description: 'A robot was changed: what was seen before says less' })
change satisfies z.ZodType<Change>

export const photo = z
  .strictObject({
    id: uuid,
    type: z.enum(['image/jpeg', 'image/webp', 'image/png']),
    data: written(/^[A-Za-z0-9+/]+={0,2}$/, (got) => ({ code: 'notBase64', parts: { got } })).max(
      Math.ceil(mostPhotoBytes / 3) * 4,
    ),
  })
  .meta({ id: 'Photo', description: 'A picture of at most 200 kB, as Base64' })
photo satisfies z.ZodType<Photo>
