import * as z from 'zod'
import { id } from '../contracts/index.ts'
import { notFound, read } from '../documents/read.ts'
import { ApiError } from '../errors.ts'
import { say } from '../sentences.ts'
import { openProcedure, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { acceptRequest, entered, invitation, invited, inviteRequest, token, welcome } from './contracts.ts'
import { checkPassphrase, deviceOf, letIn, refused } from './entering.ts'
import { hashOf } from './passphrase.ts'

const path = '/api/invitations'
const one = `${path}/{invitation}`

/** How everybody but the first lead comes in: by a link that is good once. */
export const invitations = router({
  list: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path,
        may: may.lead,
        summary: 'Invitations of the last two months, newest first',
        answer: z.array(invitation),
      },
    })
    .input(z.strictObject({}))
    .query(({ ctx }) => ctx.workspace.invitations.list()),

  create: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path,
        may: may.lead,
        summary: 'Makes invitations; their tokens are told this once',
        answer: invited,
        errors: ['malformed', 'notFound', 'conflict', 'tooLarge', 'notJson'],
      },
    })
    .input(inviteRequest)
    .mutation(async ({ input, ctx }) => {
      const { role, event = null, nickname = null, hours, count = 1 } = input
      // While nobody is a lead by name, whoever came in by an invitation would lock out who sits here.
      if (!ctx.door.isClaimed()) {
        throw new ApiError({ code: 'conflict', ...say({ code: 'claimFirst', parts: {} }) })
      }
      if (event !== null && !(await read(ctx.workspace, 'event', { id: event }))) throw notFound('event', { id: event })
      const of = { role, event, nickname, createdBy: ctx.who.person, hours }
      const made = []
      // One nickname is one person: a second invitation for it would bring the same person another device.
      for (let number = 0; number < (nickname === null ? count : 1); number++) {
        made.push(await ctx.workspace.invitations.create(of))
      }
      return made
    }),

  withdraw: procedure
    .meta({
      endpoint: {
        method: 'DELETE',
        path: one,
        may: may.lead,
        summary: 'Withdraws an invitation that nobody has used',
        answer: z.strictObject({ withdrawn: z.literal(true) }),
        errors: ['malformed', 'notFound'],
      },
    })
    .input(z.strictObject({ invitation: id }))
    .mutation(async ({ input, ctx }) => {
      if (await ctx.workspace.invitations.withdraw(input.invitation)) return { withdrawn: true as const }
      const said = say({ code: 'noInvitation', parts: { id: input.invitation } })
      throw new ApiError({ code: 'notFound', ...said, path: ['invitation'] })
    }),

  look: openProcedure
    .meta({
      endpoint: {
        method: 'POST',
        path: `${path}/look`,
        summary: 'What an invitation is for, for whoever holds its token',
        answer: welcome,
        errors: ['malformed', 'forbidden', 'notFound', 'conflict', 'tooLarge', 'notJson'],
      },
    })
    // By POST, so that the token stands in no address and in no log.
    .input(z.strictObject({ token }))
    .mutation(async ({ input, ctx }) => {
      const found = await ctx.store.entrance.welcome(input.token)
      if ('refused' in found) throw refused(found.refused)
      return { ...found, needsPassphrase: found.role === 'lead' }
    }),

  accept: openProcedure
    .meta({
      endpoint: {
        method: 'POST',
        path: `${path}/accept`,
        summary: 'Takes an invitation up: the device that asks is signed in',
        answer: entered,
        errors: ['malformed', 'forbidden', 'notFound', 'conflict', 'tooLarge', 'notJson', 'busy'],
      },
    })
    .input(acceptRequest)
    .mutation(async ({ input, ctx }) => {
      const { entrance } = ctx.store
      const found = await entrance.welcome(input.token)
      if ('refused' in found) throw refused(found.refused)
      const nickname = found.nickname ?? input.nickname ?? null
      if (nickname === null) throw refused('nicknameMissing')
      const as = { nickname, device: deviceOf(ctx, input.device) }
      const outcome = await entrance.accept(input.token, {
        ...as,
        passphraseHash: found.role === 'lead' ? await leadsHash(input.passphrase, nickname) : null,
      })
      if ('refused' in outcome) throw refused(outcome.refused, nickname)
      return { ...(await letIn(ctx, outcome, 'invitations.accept')), event: found.event }
    }),
})

async function leadsHash(passphrase: string | undefined, nickname: string): Promise<string> {
  if (passphrase === undefined) {
    throw new ApiError({ code: 'malformed', ...say({ code: 'passphraseMissing', parts: {} }), path: ['passphrase'] })
  }
  checkPassphrase(passphrase, nickname)
  return hashOf(passphrase)
}
