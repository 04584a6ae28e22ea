import * as z from 'zod'
import { type Happening, happenings, type Observation } from '../../../model/scouting/types.ts'
import { count, format, id, list, measure } from '../primitives.ts'
import { device, duringMatch, elapsed, note, pieces, scout, sequence, team, uuid } from './shared.ts'

/** Happenings of one record at most: several a second through the longest match. */
export const mostHappenings = 2000

export const happening = z
  .strictObject({
    elapsed,
    what: z.enum(happenings).describe('What the robot did'),
    goal: id.optional(),
    source: id.optional(),
    n: pieces.optional().describe('How many pieces; 1 where nothing is said'),
    counted: z.enum(['each', 'estimate']).optional().describe('Whether the pieces were counted or estimated'),
    x: measure(-100, 1000, 'Where, along the field’s length (m)').optional(),
    y: measure(-100, 1000, 'Where, along its width (m)').optional(),
  })
  .meta({ id: 'Happening', description: 'One thing that a robot did' })
happening satisfies z.ZodType<Happening>

export const observation = z
  .strictObject({
    format,
    id: uuid,
    match: id.nullable().describe('Id of the match; null for a run outside of one'),
    team,
    subject: z.enum(['robot', 'human']).describe('The robot, or its alliance’s human player'),
    origin: z.enum(['live', 'video', 'practice']),
    scout,
    device,
    sequence,
    replaces: uuid.optional().describe('Id of the observation that this one corrects'),
    game: count(1, 1_000_000_000, 'Revision of the game that it was made with'),
    identifiedBy: z.enum(['number', 'position']).describe('How the scout knew which robot it was'),
    absent: z.boolean().optional(),
    startSpot: id.optional(),
    leftStart: z.boolean().optional(),
    routine: id.optional(),
    driver: id.optional(),
    robotRevision: count(1, 1_000_000_000, 'Revision of the design').optional(),
    departedAt: duringMatch.optional().describe('When it departed for its finish (s since the match’s start)'),
    timeline: list(happening, 0, mostHappenings, 'What it did, in order').optional(),
    counts: list(
      z.strictObject({ goal: id, period: z.enum(['auto', 'teleop']), scored: pieces, missed: pieces }),
      0,
      40,
      'Pieces by goal and period, where they were only counted',
    ).optional(),
    finish: z.strictObject({ attempted: id.nullable(), achieved: id.nullable() }).optional(),
    defence: z.strictObject({ playedSeconds: duringMatch, received: z.enum(['none', 'some', 'heavy']) }).optional(),
    lostSeconds: duringMatch.optional(),
    stoppedAt: duringMatch.optional(),
    fouls: z.strictObject({ minor: count(0, 100, 'Minor fouls'), major: count(0, 100, 'Major fouls') }).optional(),
    note: note.optional(),
  })
  .meta({ id: 'Observation', description: 'What a scout saw of one robot, or of one human player' })
observation satisfies z.ZodType<Observation>
