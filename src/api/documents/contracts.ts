import * as z from 'zod'
import { id, name, readingRecord, revision } from '../contracts/index.ts'
import { anyBody, kind } from './kinds.ts'

const text = z.string()
const savedAt = text.describe('ISO 8601')

export const summary = z
  .strictObject({ kind, id: text, name: text, revision: z.number(), savedAt, removed: z.boolean() })
  .meta({ id: 'DocumentSummary' })

export const stored = z
  .strictObject({ ...summary.shape, body: anyBody, note: text.nullable() })
  .meta({ id: 'StoredDocument', description: 'A document at one of its revisions' })

export const saved = z.strictObject({ saved: stored })

export const revisionSummary = z
  .strictObject({ revision: z.number(), savedAt, name: text, note: text.nullable() })
  .meta({ id: 'RevisionSummary' })

export const key = { kind, id }

const base = revision.nullable().describe('The revision that the edit began from; null for a new document')
const note = z.string().max(500).optional().describe('Why it was changed')

export const listRequest = z.strictObject({
  kind,
  withRemoved: z.boolean().optional().describe('Removed documents too'),
})

export const getRequest = z.strictObject({ ...key, revision: revision.optional() })

export const saveRequest = z.strictObject({
  ...key,
  name: name.optional().describe('If given, the name that the body has'),
  base,
  note,
  body: z.unknown().meta({ override: { $ref: '#/components/schemas/DocumentBody' } }),
})

export const readingRequest = z.strictObject({
  id: id.describe('Id of the game'),
  base: revision.describe('The newest revision of the game, which stays its rules'),
  body: z.unknown().meta({ override: { $ref: '#/components/schemas/DocumentBody' } }),
  reading: readingRecord.pick({ id: true, name: true, rule: true }).describe('What the reading is called'),
})

export const checkRequest = z.strictObject({
  kind,
  body: z.unknown().meta({ override: { $ref: '#/components/schemas/DocumentBody' } }),
})

export const checkAnswer = z.strictObject({
  shape: z.boolean().describe('Whether it has the form of its kind; if not, nothing else was looked at'),
  problems: z.array(
    z.strictObject({
      path: z.array(z.union([z.string(), z.int()])).readonly(),
      message: z.string(),
      said: z
        .strictObject({ code: z.string(), parts: z.record(z.string(), z.unknown()) })
        .optional()
        .describe('The sentence’s name and parts, for who says it in another language or other units'),
    }),
  ),
})

export const restoreRequest = z.strictObject({
  ...key,
  revision,
  base: revision.describe('The newest revision that you saw'),
})

export const removeRequest = z.strictObject({
  ...key,
  undo: z.boolean().optional().describe('True brings a removed document back'),
})
