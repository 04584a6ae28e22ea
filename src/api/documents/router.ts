import * as z from 'zod'
import type { DocumentKind } from '../../model/documents/index.ts'
import { id, option } from '../contracts/index.ts'
import { type Code, refuse } from '../errors.ts'
import { type Endpoint, procedure, router } from '../trpc.ts'
import { admitted, may, type Who } from '../who.ts'
import {
  checkAnswer,
  checkRequest,
  getRequest,
  key,
  listRequest,
  readingRequest,
  removeRequest,
  restoreRequest,
  revisionSummary,
  saved,
  saveRequest,
  stored,
  summary,
} from './contracts.ts'
import { notFound, type Outcome, read } from './read.ts'
import { saveAsReading } from './reading.ts'
import { partsOf, type ResolvedOption, resolved } from './resolve.ts'
import { check, conflictOf, save } from './save.ts'

const document = '/api/documents/{kind}/{id}'
const writing: readonly Code[] = ['malformed', 'forbidden', 'conflict', 'tooLarge', 'notJson']
const refused = (outcome: unknown) => conflictOf(outcome as Outcome)

function endpoint(offered: Endpoint): { endpoint: Endpoint } {
  return { endpoint: offered }
}

/** Events are kept by leads: what scouts are told to do hangs on them. */
const mayChange = (who: Who, kind: DocumentKind) => admitted(who, kind === 'event' ? may.lead : may.design)

const reference = z.strictObject({ id: z.string(), revision: z.number() })

/** Documents with revisions. Saving makes a new one; nothing is ever lost. */
export const documents = router({
  list: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: '/api/documents/{kind}',
        may: may.read,
        summary: 'All documents of a kind',
        answer: z.array(summary),
      }),
    )
    .input(listRequest)
    .query(({ input, ctx }) => ctx.workspace.list(input.kind, input.withRemoved ?? false)),

  get: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: document,
        may: may.read,
        summary: 'A document at its newest revision, or at a given one',
        answer: stored,
        errors: ['notFound'],
      }),
    )
    .input(getRequest)
    .query(async ({ input, ctx }) => {
      const found = await read(ctx.workspace, input.kind, input)
      if (!found) throw notFound(input.kind, input)
      return found
    }),

  revisions: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: `${document}/revisions`,
        may: may.read,
        summary: 'Revisions of a document, newest first',
        answer: z.array(revisionSummary),
        errors: ['notFound'],
      }),
    )
    .input(z.strictObject(key))
    .query(async ({ input, ctx }) => {
      const found = await ctx.workspace.revisions(input.kind, input.id)
      if (found.length === 0) throw notFound(input.kind, input)
      return found
    }),

  save: procedure
    .meta(
      endpoint({
        method: 'PUT',
        path: document,
        may: may.design,
        summary:
          'Saves a document as a new revision; 409 brings what was saved in between, and what the edit began from',
        answer: saved,
        errors: writing,
        refused,
      }),
    )
    .input(saveRequest)
    .mutation(async ({ input, ctx }) => {
      mayChange(ctx.who, input.kind)
      const outcome = await save(ctx.workspace, input)
      if (input.kind === 'event') ctx.tell({ event: input.id, what: 'event' })
      return outcome
    }),

  check: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: '/api/documents/{kind}/check',
        may: may.design,
        audit: false,
        summary: 'What is wrong with a document, without saving it',
        answer: checkAnswer,
        errors: ['malformed', 'forbidden', 'tooLarge', 'notJson'],
      }),
    )
    .input(checkRequest)
    .mutation(({ input, ctx }) => check(ctx.workspace, input.kind, input.body)),

  restore: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: `${document}/restore`,
        may: may.design,
        summary: 'Makes a copy of an older revision the newest',
        answer: saved,
        errors: ['notFound', ...writing],
        refused,
      }),
    )
    .input(restoreRequest)
    .mutation(async ({ input, ctx }) => {
      mayChange(ctx.who, input.kind)
      const outcome = await ctx.workspace.restore(input.kind, input.id, input.revision, input.base)
      if (!outcome) throw notFound(input.kind, input)
      return outcome as Outcome
    }),

  saveReading: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: '/api/documents/game/{id}/readings',
        may: may.design,
        summary: 'Saves changed rules as a reading, and leaves the rules as they were the newest; all of it or nothing',
        answer: z.strictObject({ saved: z.strictObject({ reading: stored, game: stored }) }),
        errors: ['notFound', ...writing],
        refused,
      }),
    )
    .input(readingRequest)
    .mutation(({ input, ctx }) => saveAsReading(ctx.workspace, input)),

  remove: procedure
    .meta(
      endpoint({
        method: 'DELETE',
        path: document,
        may: may.design,
        summary: 'Hides a document from lists, or brings it back; its revisions stay',
        answer: z.strictObject({ removed: z.boolean() }),
        errors: ['notFound', 'forbidden'],
      }),
    )
    .input(removeRequest)
    .mutation(async ({ input: { kind, id, undo = false }, ctx }) => {
      mayChange(ctx.who, kind)
      if (!(await ctx.workspace.remove(kind, id, undo))) throw notFound(kind, { id })
      return { removed: !undo }
    }),

  resolved: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: '/api/options/{id}/resolved',
        may: may.read,
        summary: 'An option with the robot of its design, ready to be computed with, and the revisions of its parts',
        answer: z.strictObject({ option, game: reference, design: reference }),
        errors: ['notFound'],
      }),
    )
    .input(z.strictObject({ id }))
    .query(async ({ input, ctx }): Promise<ResolvedOption> => {
      const record = await read(ctx.workspace, 'option', input)
      if (!record) throw notFound('option', input)
      const parts = await partsOf(ctx.workspace, record.body)
      if (!('message' in parts)) return resolved(record.body, parts)
      return refuse([parts])
    }),
})
