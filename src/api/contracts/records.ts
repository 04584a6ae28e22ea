import * as z from 'zod'
import type {
  ComparisonRecord,
  DecisionRecord,
  DesignRecord,
  FieldReferences,
  FromField,
  KeptAir,
  KeptOverride,
  OptionRecord,
  OptionReference,
  Override,
  Reference,
  StatedField,
} from '../../model/documents/records.ts'
import { compareAnswer, inputs, objective, seed } from './compute/compare.ts'
import { duration } from './duration.ts'
import { game } from './game.ts'
import { option, play } from './option.ts'
import { count, format, id, list, measure, name, points, probability, text } from './primitives.ts'
import { robot } from './robot.ts'
import { written } from './sentences.ts'

export const revision = count(1, 1_000_000_000, 'Revision, counted from 1')

export const reference = z
  .strictObject({ id, revision })
  .meta({ id: 'Reference', description: 'A stored document at one of its revisions' })
reference satisfies z.ZodType<Reference>

const legRef = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('collect'), source: id }),
  z.strictObject({ kind: z.literal('score'), goal: id, entry: count(0, 100, 'Which way to score there, from 0') }),
  z.strictObject({ kind: z.literal('finish'), finish: id }),
])

const fromField = z
  .strictObject({
    design: reference.describe('The design that it is a copy of'),
    event: id.describe('Id of the event whose records it was'),
    team: name,
    matches: count(0, 10_000, 'Matches behind it'),
    practice: count(0, 10_000, 'Runs of practice behind it'),
    trips: count(0, 1_000_000, 'Trips behind it'),
    shifts: list(
      z.strictObject({
        leg: legRef,
        stage: id.nullable().describe('Null: the leg’s own time'),
        seconds: measure(-600, 600, 's'),
      }),
      0,
      100,
      'Stages that were moved, and by how much',
    ),
  })
  .meta({ id: 'FromField', description: 'Where the numbers of a copy come from that was written back from the field' })
fromField satisfies z.ZodType<FromField>

export const designRecord = z
  .strictObject({ format, game: id.describe('Id of the game'), robot, fromField: fromField.optional() })
  .meta({ id: 'DesignRecord', description: 'A robot kept for a game' })
designRecord satisfies z.ZodType<DesignRecord>

export const optionRecord = z
  .strictObject({
    format,
    game: id.describe('Id of the game'),
    design: id.describe('Id of the design'),
    option: z.strictObject(play),
  })
  .meta({ id: 'OptionRecord', description: 'A way to play a design; the robot is looked up' })
optionRecord satisfies z.ZodType<OptionRecord>

const date = written(/^\d{4}-\d{2}-\d{2}$/, (got) => ({ code: 'notADate', parts: { got } }))

const moment = written(/^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2}))?$/, (got) => ({
  code: 'notAMoment',
  parts: { got },
}))

/** All kinds of override with the same further fields. */
function overrideWith<Shape extends z.ZodRawShape>(further: Shape) {
  const shared = { id, reason: name.describe('Why it is known better'), who: name, on: moment, ...further }
  return z.discriminatedUnion('kind', [
    z.strictObject({ ...shared, kind: z.literal('points'), option: id, points }),
    z.strictObject({ ...shared, kind: z.literal('leg'), robot: id, leg: legRef, whole: duration }),
    z.strictObject({ ...shared, kind: z.literal('auto'), option: id, points }),
    z.strictObject({
      ...shared,
      kind: z.literal('pieces'),
      option: id,
      goal: id,
      pieces: measure(0, 10_000, 'pieces'),
    }),
    z.strictObject({
      ...shared,
      kind: z.literal('travel'),
      robot: id,
      from: id.describe('Id of a start or spot'),
      to: id.describe('Id of a start or spot'),
      seconds: measure(0.01, 600, 's'),
    }),
    z.strictObject({ ...shared, kind: z.literal('success'), robot: id, finish: id, probability }),
  ])
}

const override = overrideWith({}).meta({
  id: 'Override',
  description: 'A number that somebody sets in place of the computed one',
})
override satisfies z.ZodType<Override>

const keptOverride = overrideWith({ computed: z.number().describe('What had been computed there') }).meta({
  id: 'KeptOverride',
})
keptOverride satisfies z.ZodType<KeptOverride>

const optionReference = z.strictObject({ option: reference, design: reference })
optionReference satisfies z.ZodType<OptionReference>

const level = id.nullable().describe('The event’s level; null where no bonus asks for one')
const replicates = count(1, 1_000_000, 'Matches of each option')

const fieldReferences = z
  .strictObject({
    partners: list(optionReference, 2, 2, 'Two that play with each option'),
    opponents: list(optionReference, 3, 3, 'Three that play against it'),
    level,
    replicates,
  })
  .meta({ id: 'FieldReferences', description: 'Who plays with and against the options' })
fieldReferences satisfies z.ZodType<FieldReferences>

const statedField = z.strictObject({
  partners: list(option, 2, 2, 'Two that played with each option'),
  opponents: list(option, 3, 3, 'Three that played against it'),
  level,
  replicates,
})
statedField satisfies z.ZodType<StatedField>

export const comparisonRecord = z
  .strictObject({
    format,
    id,
    name,
    question: text,
    game: reference,
    options: list(optionReference, 1, 12, 'Options and their designs'),
    inputs,
    breakEven: id.nullable().describe('Id of the input whose break-even is shown'),
    seed,
    objective: objective.optional(),
    field: fieldReferences.optional(),
    overrides: list(override, 0, 60, 'Numbers set by hand').optional(),
    result: compareAnswer.nullable(),
  })
  .meta({ id: 'ComparisonRecord' })
comparisonRecord satisfies z.ZodType<ComparisonRecord>

const keptAir = z
  .strictObject({
    option: id,
    possible: z.boolean().describe('False: the air can not be stored as it is given'),
    lostAt: z
      .number()
      .min(0)
      .nullable()
      .describe('Time left at which the working pressure is lost, in seconds; null: never'),
    cost: z.number().describe('Points a match that this costs'),
  })
  .meta({ id: 'KeptAir' })
keptAir satisfies z.ZodType<KeptAir>

const sentences = list(text, 0, 50, 'Sentences')

export const decisionRecord = z
  .strictObject({
    format,
    id,
    name,
    question: text,
    decidedOn: date,
    comparison: reference,
    chosen: id.describe('Id of the option that was chosen'),
    assumptions: list(z.strictObject({ text, source: text }), 0, 100, 'What was assumed, and on what grounds'),
    result: text,
    wouldChange: sentences,
    measureNext: sentences,
    objections: list(
      z.strictObject({ who: text.optional(), text, answer: text }),
      0,
      50,
      'Objections and their answers',
    ),
    agreed: list(z.strictObject({ who: text, on: moment }), 0, 100, 'Who agreed, and when'),
    checkAtEvent: text,
    checks: list(
      z.strictObject({ quantity: text, expected: text, when: text }),
      0,
      50,
      'What is checked at the event',
    ).optional(),
    snapshot: z.strictObject({
      game,
      options: list(option, 1, 12, 'Options'),
      inputs,
      result: compareAnswer,
      objective: objective.optional(),
      field: statedField.optional(),
      overrides: list(keptOverride, 0, 60, 'Numbers set by hand').optional(),
      air: list(keptAir, 0, 12, 'Stored air of the options that have it').optional(),
      tradeOff: name.optional().describe('Name of the comparison'),
    }),
  })
  .meta({ id: 'DecisionRecord' })
decisionRecord satisfies z.ZodType<DecisionRecord>
