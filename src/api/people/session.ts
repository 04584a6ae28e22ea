import * as z from 'zod'
import { onlyWorkspace } from '../../store/index.ts'
import { ApiError } from '../errors.ts'
import { say } from '../sentences.ts'
import { openProcedure, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import type { Attempts } from './attempts.ts'
import { claimRequest, passphraseRequest, sessionAnswer, signInRequest, signOutRequest } from './contracts.ts'
import { checkPassphrase, deviceOf, letIn, note, refused, sessionOf } from './entering.ts'
import { hashOf, isPassphrase } from './passphrase.ts'

const path = '/api/session'

/** Counts an attempt; throws where the account has to wait. */
function attempt(attempts: Attempts, account: string): void {
  const seconds = attempts.begin(account)
  if (seconds === 0) return
  throw new ApiError({ code: 'tooMany', ...say({ code: 'tooManyTries', parts: { seconds } }), retryAfter: seconds })
}

const wrong = (field: string) =>
  new ApiError({ code: 'unauthenticated', ...say({ code: 'wrongPassphrase', parts: {} }), path: [field] })

const accountOf = (workspace: string, nickname: string): string =>
  `${workspace}/${nickname.normalize('NFKC').trim().toLowerCase()}`

/** Who is signed in, and how leads come in. */
export const session = router({
  get: openProcedure
    .meta({
      endpoint: {
        method: 'GET',
        path,
        summary: 'Who is signed in on this device',
        answer: sessionAnswer,
      },
    })
    .input(z.strictObject({}))
    .query(({ ctx }) => {
      // As long as a device comes, it stays signed in.
      if (ctx.session && ctx.door.token) ctx.door.begin(ctx.door.token)
      return sessionOf(ctx)
    }),

  claim: openProcedure
    .meta({
      endpoint: {
        method: 'POST',
        path: `${path}/claim`,
        summary: 'Makes whoever holds the set-up link the first lead of a workspace',
        answer: sessionAnswer,
        errors: ['malformed', 'forbidden', 'notFound', 'conflict', 'tooLarge', 'notJson', 'busy'],
      },
    })
    .input(claimRequest)
    .mutation(async ({ input, ctx }) => {
      const { token, nickname, passphrase } = input
      const { entrance } = ctx.store
      // Before the hash: whoever has no link costs nothing.
      const refusal = await entrance.claimRefusal(token)
      if (refusal) throw refused(refusal)
      checkPassphrase(passphrase, nickname)
      const passphraseHash = await hashOf(passphrase)
      const outcome = await entrance.claim(token, { nickname, passphraseHash, device: deviceOf(ctx, input.device) })
      if ('refused' in outcome) throw refused(outcome.refused, nickname)
      const answer = await letIn(ctx, outcome, 'session.claim')
      ctx.door.claimed()
      return answer
    }),

  signIn: openProcedure
    .meta({
      endpoint: {
        method: 'POST',
        path,
        summary: 'Signs somebody in by nickname and passphrase; attempts are limited by nickname',
        answer: sessionAnswer,
        errors: ['malformed', 'unauthenticated', 'forbidden', 'tooLarge', 'notJson', 'tooMany', 'busy'],
      },
    })
    .input(signInRequest)
    .mutation(async ({ input, ctx }) => {
      const { workspace = onlyWorkspace, nickname, passphrase } = input
      const tried = accountOf(workspace, nickname)
      attempt(ctx.door.attempts, tried)
      const account = await ctx.store.entrance.account(workspace, nickname)
      const right = await isPassphrase(passphrase, account?.passphraseHash ?? null)
      if (!account || !right) {
        // Nobody waits for it: an answer that takes longer would tell that there is such a nickname.
        if (account) void note(ctx, { ...account, person: { id: account.person } }, 'session.refused')
        throw wrong('passphrase')
      }
      ctx.door.attempts.succeeded(tried)
      const outcome = await ctx.store.entrance.enter(account.workspaceId, account.person, deviceOf(ctx, input.device))
      if (!outcome) throw wrong('passphrase')
      return letIn(ctx, outcome, 'session.signIn')
    }),

  signOut: openProcedure
    .meta({
      endpoint: {
        method: 'DELETE',
        path,
        summary: 'Ends the session of this device, or all of whoever asks',
        answer: z.strictObject({ ended: z.number().describe('Sessions that were ended') }),
        errors: ['malformed', 'forbidden'],
      },
    })
    .input(signOutRequest)
    .mutation(async ({ input, ctx }) => {
      ctx.door.end()
      if (!ctx.session) return { ended: 0 }
      const { person, device } = ctx.session
      await note(ctx, ctx.session, 'session.signOut')
      if (input.everywhere) return { ended: await ctx.workspace.people.revokeAll(person.id) }
      await ctx.workspace.people.revoke(device.id)
      return { ended: 1 }
    }),

  changePassphrase: procedure
    .meta({
      endpoint: {
        method: 'PUT',
        path: `${path}/passphrase`,
        may: may.member,
        summary: 'Sets the passphrase of whoever asks, and ends their other sessions',
        answer: z.strictObject({ ended: z.number().describe('Other sessions that were ended') }),
        errors: ['malformed', 'conflict', 'tooLarge', 'notJson', 'tooMany', 'busy'],
      },
    })
    .input(passphraseRequest)
    .mutation(async ({ input, ctx }) => {
      if (!ctx.session) throw new ApiError({ code: 'unauthenticated', ...say({ code: 'noSession', parts: {} }) })
      const { person, device, workspace } = ctx.session
      const { people } = ctx.workspace
      checkPassphrase(input.passphrase, person.nickname)
      const before = await people.passphraseHash(person.id)
      if (before !== null) {
        const tried = accountOf(workspace, person.nickname)
        attempt(ctx.door.attempts, tried)
        if (!(await isPassphrase(input.current ?? '', before))) throw notCurrent()
        ctx.door.attempts.succeeded(tried)
      }
      await people.setPassphrase(person.id, await hashOf(input.passphrase))
      return { ended: await people.revokeAll(person.id, device.id) }
    }),
})

/** No 401: whoever asks is signed in. */
const notCurrent = () =>
  new ApiError({ code: 'malformed', ...say({ code: 'notCurrentPassphrase', parts: {} }), path: ['current'] })
