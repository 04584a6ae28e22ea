import * as z from 'zod'
import { mostCorrections, mostDevices, mostRounds } from '../../store/index.ts'
import type { Given, Round } from '../../store/types.ts'
import { id } from '../contracts/index.ts'
import { ApiError, type Code } from '../errors.ts'
import { type ApiSaid, say } from '../sentences.ts'
import { type OpenContext, type OpenEndpoint, openProcedure, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import {
  closeRequest,
  code,
  device,
  given,
  guess,
  opened,
  openRequest,
  reach,
  removeRequest,
  round,
} from './contracts.ts'
import { bringRequest, brought, fileOf, roundsFile } from './file.ts'
import { sheetOf, subjectOf } from './subject.ts'

const rounds = '/api/guess-rounds'
const one = `${rounds}/{code}`
const files = `${rounds}/of/{sheet}`
const writing: readonly Code[] = ['malformed', 'forbidden', 'notFound', 'tooMany', 'tooLarge', 'notJson']

const endpoint = <Offered extends OpenEndpoint>(offered: Offered): { endpoint: Offered } => ({ endpoint: offered })

const missing = (named: string) =>
  new ApiError({ code: 'notFound', ...say({ code: 'noRound', parts: { code: named } }), path: ['code'] })

const roundsFull = () =>
  new ApiError({ code: 'conflict', ...say({ code: 'roundsFull', parts: { most: mostRounds } }), path: ['sheet'] })

const refusals: { readonly [why in Exclude<Extract<Given, { refused: unknown }>['refused'], 'missing'>]: ApiSaid } = {
  closed: { code: 'roundClosed', parts: {} },
  tooManyDevices: { code: 'devicesFull', parts: { most: mostDevices } },
  tooManyCorrections: { code: 'correctionsFull', parts: { most: mostCorrections } },
}

async function withGuesses(workspace: OpenContext['workspace'], found: Round) {
  return { ...found, guesses: await workspace.rounds.guesses(found.code) }
}

/** A phone in a round has its code and no session: the code opens that one round, in whichever workspace it is. */
async function workspaceOf({ store, who, workspace }: OpenContext, code: string) {
  if (who && (await workspace.rounds.get(code))) return workspace
  const id = await store.workspaceOfRound(code)
  if (id === null) throw missing(code)
  return store.workspace(id)
}

/** Blind guesses: many people guess one leg's time, and nobody sees another's guess before the round is closed. */
export const guesses = router({
  open: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: rounds,
        may: may.design,
        summary: 'Opens a round of guesses for one leg of a way on a stored quick sheet',
        answer: round,
        errors: [...writing, 'conflict'],
      }),
    )
    .input(openRequest)
    .mutation(async ({ input, ctx }) => {
      const { closingKey, ...asked } = input
      const made = await ctx.workspace.rounds.open(await subjectOf(ctx.workspace, asked), closingKey)
      if (made) return made
      throw roundsFull()
    }),

  list: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: rounds,
        may: may.read,
        summary: 'Rounds of a quick sheet, newest first',
        answer: z.array(round),
      }),
    )
    .input(z.strictObject({ sheet: id.describe('Id of the quick sheet') }))
    .query(({ input, ctx }) => ctx.workspace.rounds.list(input.sheet)),

  get: openProcedure
    .meta(
      endpoint({
        method: 'GET',
        path: one,
        summary: 'A round: how many have guessed and, when it is closed, what',
        answer: opened,
        errors: ['malformed', 'notFound', 'tooMany'],
      }),
    )
    .input(z.strictObject({ code }))
    .query(async ({ input, ctx }) => {
      const workspace = await workspaceOf(ctx, input.code)
      const found = await workspace.rounds.get(input.code)
      if (!found) throw missing(input.code)
      return withGuesses(workspace, found)
    }),

  give: openProcedure
    .meta(
      endpoint({
        method: 'PUT',
        path: `${one}/guesses/{device}`,
        summary: 'One device’s guess; given again, it corrects the one before, until the round is closed',
        answer: given,
        errors: [...writing, 'conflict'],
      }),
    )
    .input(z.strictObject({ code, device, guess }))
    .mutation(async ({ input, ctx }) => {
      const { rounds } = await workspaceOf(ctx, input.code)
      const outcome = await rounds.give(input.code, input.device, input.guess)
      if ('given' in outcome) return outcome.given
      if (outcome.refused === 'missing') throw missing(input.code)
      const path = [outcome.refused === 'closed' ? 'code' : 'device']
      throw new ApiError({ code: 'conflict', ...say(refusals[outcome.refused]), path })
    }),

  arrive: openProcedure
    .meta(
      endpoint({
        method: 'PUT',
        path: `${one}/arrivals/{device}`,
        summary:
          'Says that a device has opened the round, so that whoever closes it knows how many have not guessed yet',
        answer: round,
        errors: writing,
      }),
    )
    .input(z.strictObject({ code, device }))
    .mutation(async ({ input, ctx }) => {
      const { rounds } = await workspaceOf(ctx, input.code)
      const found = await rounds.arrive(input.code, input.device)
      if (!found) throw missing(input.code)
      return found
    }),

  close: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: `${one}/close`,
        may: may.design,
        summary: 'Closes a round for good, and shows its guesses',
        answer: opened,
        errors: writing,
      }),
    )
    .input(closeRequest)
    .mutation(async ({ input, ctx }) => {
      const { code, closingKey, anyway = false } = input
      const found = await ctx.workspace.rounds.close(code, { key: closingKey, anyway })
      if (!found) throw missing(input.code)
      if ('refused' in found) {
        throw new ApiError({ code: 'forbidden', ...say({ code: 'notYourRound', parts: {} }), path: ['closingKey'] })
      }
      return withGuesses(ctx.workspace, found)
    }),

  remove: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: `${one}/remove`,
        may: may.design,
        summary: 'Takes a round off its sheet, open or closed, or brings it back; its guesses are kept unseen',
        answer: z.strictObject({ removed: z.boolean() }),
        errors: writing,
      }),
    )
    .input(removeRequest)
    .mutation(async ({ input: { code, undo = false }, ctx }) => {
      if (!(await ctx.workspace.rounds.remove(code, undo))) throw missing(code)
      return { removed: !undo }
    }),

  file: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: files,
        may: may.read,
        summary: 'The closed rounds of a quick sheet as a file',
        answer: roundsFile,
        errors: ['notFound', 'tooMany'],
      }),
    )
    .input(fileOf)
    .query(async ({ input, ctx }) => {
      const { id, name } = await sheetOf(ctx.workspace, input.sheet)
      return { format: 1 as const, sheet: { id, name }, rounds: await ctx.workspace.rounds.keep(id) }
    }),

  bring: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: files,
        may: may.design,
        summary:
          'Adds the rounds of a file to a quick sheet, all or none; those that are there already stay as they are',
        answer: brought,
        errors: [...writing, 'conflict'],
      }),
    )
    .input(bringRequest)
    .mutation(async ({ input, ctx }) => {
      const { id } = await sheetOf(ctx.workspace, input.sheet)
      const outcome = await ctx.workspace.rounds.bring(id, input.file.rounds)
      if ('added' in outcome) return outcome
      throw roundsFull()
    }),

  reach: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: '/api/reach',
        may: may.member,
        summary: 'Whether other devices can reach this server, and under which addresses',
        answer: reach,
      }),
    )
    .input(z.strictObject({}))
    .query(({ ctx }) => ctx.reach()),
})
