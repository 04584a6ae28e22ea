import * as z from 'zod'

const metres = (what: string) => z.number().optional().describe(`m, ${what}`)

/** Partners that clash in autonomous. What a kind does not have is left out. */
export const warning = z
  .strictObject({
    kind: z
      .enum(['start', 'pieces', 'path', 'end'])
      .describe('They begin at one place, take the same pieces, drive into each other, or end at one place'),
    alliance: z.enum(['ours', 'theirs']),
    partners: z.array(z.strictObject({ position: z.number().describe('1 to 3'), robot: z.string() })),
    at: z.number().optional().describe('Seconds since the match’s start at which they first touch, of a path'),
    distance: metres('from centre to centre: at the start or end, or the least on their paths'),
    touching: metres('both radii (half the smaller side of each footprint): nearer than this they touch'),
    source: z.string().optional().describe('Of pieces: the id of their source'),
    wanted: z.number().optional().describe('Pieces that the routines take of it'),
    stock: z.number().optional().describe('Pieces that lie there at the match’s start'),
    message: z.string(),
  })
  .meta({ id: 'Warning', description: 'Partners that clash in autonomous. It costs no points in the computation.' })

export type Warning = z.infer<typeof warning>

export const warnings = z.array(warning).describe('Where partners clash in autonomous; none is an empty list')
