import * as z from 'zod'
import { id } from '../contracts/index.ts'
import { ApiError } from '../errors.ts'
import { say } from '../sentences.ts'
import { procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { refuseUnchanged, tellPeople } from './changes.ts'
import { auditEntry, auditRequest, deviceName, member, memberDevice, namedPerson, role } from './contracts.ts'
import { personalProcedures } from './personal.ts'

const done = <Key extends string>(key: Key) => z.strictObject({ [key]: z.boolean() } as { [_ in Key]: z.ZodBoolean })
const person = z.strictObject({ person: id.describe('Id of the person') })
const device = z.strictObject({ device: id.describe('Id of the device') })

const noDevice = (named: string) =>
  new ApiError({ code: 'notFound', ...say({ code: 'noDevice', parts: { id: named } }), path: ['device'] })

/** Members of the workspace. What is changed here acts on the next request of whoever it is about. */
export const people = router({
  ...personalProcedures,

  list: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/people',
        may: may.lead,
        summary: 'Members, those who have left too',
        answer: z.array(member),
      },
    })
    .input(z.strictObject({}))
    .query(({ ctx }) => ctx.workspace.people.list()),

  changeRole: procedure
    .meta({
      endpoint: {
        method: 'PUT',
        path: '/api/people/{person}/role',
        may: may.lead,
        summary: 'Gives somebody another role',
        answer: done('changed'),
        errors: ['malformed', 'notFound', 'conflict', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ ...person.shape, role }))
    .mutation(async ({ input, ctx }) => {
      refuseUnchanged(await ctx.workspace.people.changeRole(input.person, input.role), input.person)
      tellPeople(ctx)
      return { changed: true }
    }),

  end: procedure
    .meta({
      endpoint: {
        method: 'DELETE',
        path: '/api/people/{person}',
        may: may.lead,
        summary: 'Ends a membership and signs the person out everywhere, or takes the person back; records stay',
        answer: done('ended'),
        errors: ['malformed', 'notFound', 'conflict'],
      },
    })
    .input(z.strictObject({ ...person.shape, undo: z.boolean().optional().describe('Takes the person back') }))
    .mutation(async ({ input, ctx }) => {
      const { person: named, undo = false } = input
      refuseUnchanged(await ctx.workspace.people.end(named, undo), named)
      tellPeople(ctx)
      return { ended: !undo }
    }),

  signOut: procedure
    .meta({
      endpoint: {
        method: 'DELETE',
        path: '/api/people/{person}/sessions',
        may: may.lead,
        summary: 'Signs somebody out on all devices',
        answer: z.strictObject({ ended: z.number().describe('Sessions that were ended') }),
        errors: ['malformed', 'notFound'],
      },
    })
    .input(person)
    .mutation(async ({ input, ctx }) => {
      if (!(await ctx.workspace.people.get(input.person))) refuseUnchanged('missing', input.person)
      const ended = await ctx.workspace.people.revokeAll(input.person)
      tellPeople(ctx)
      return { ended }
    }),
})

/** Those whom files of events brought along: they are no members, and nobody signs in by their names. */
export const named = router({
  list: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/named',
        may: may.read,
        summary: 'What those are called who came with files of events and are no members here',
        answer: z.array(namedPerson),
      },
    })
    .input(z.strictObject({}))
    .query(({ ctx }) => ctx.workspace.exchange.named()),

  forget: procedure
    .meta({
      endpoint: {
        method: 'DELETE',
        path: '/api/named/{person}',
        may: may.lead,
        summary: 'Removes a nickname that came with a file, for good; what this person recorded stays',
        answer: done('forgotten'),
        errors: ['malformed', 'notFound'],
      },
    })
    .input(person)
    .mutation(async ({ input, ctx }) => {
      if (!(await ctx.workspace.exchange.forgetName(input.person))) refuseUnchanged('missing', input.person)
      tellPeople(ctx)
      return { forgotten: true }
    }),
})

/** Phones and browsers on which members are or were signed in. */
export const devices = router({
  list: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/devices',
        may: may.lead,
        summary: 'Devices, those that are signed out too; the one seen last comes first',
        answer: z.array(memberDevice),
      },
    })
    .input(z.strictObject({}))
    .query(({ ctx }) => ctx.workspace.people.devices()),

  rename: procedure
    .meta({
      endpoint: {
        method: 'PUT',
        path: '/api/devices/{device}/name',
        may: may.lead,
        summary: 'Gives a device another name',
        answer: done('renamed'),
        errors: ['malformed', 'notFound', 'tooLarge', 'notJson'],
      },
    })
    .input(z.strictObject({ ...device.shape, name: deviceName }))
    .mutation(async ({ input, ctx }) => {
      if (!(await ctx.workspace.people.renameDevice(input.device, input.name))) throw noDevice(input.device)
      ctx.tell({ event: null, what: 'devices' })
      return { renamed: true }
    }),

  revoke: procedure
    .meta({
      endpoint: {
        method: 'DELETE',
        path: '/api/devices/{device}',
        may: may.lead,
        summary: 'Signs a device out; what it sent stays',
        answer: done('revoked'),
        errors: ['malformed', 'notFound'],
      },
    })
    .input(device)
    .mutation(async ({ input, ctx }) => {
      if (!(await ctx.workspace.people.revoke(input.device))) throw noDevice(input.device)
      tellPeople(ctx)
      return { revoked: true }
    }),
})

/** What changed data, by whom and on which device. */
export const audit = router({
  list: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/audit',
        may: may.lead,
        summary: 'What changed data, newest first, in pages',
        answer: z.array(auditEntry),
        errors: ['malformed'],
      },
    })
    .input(auditRequest)
    .query(({ input: { before, limit = 50 }, ctx }) => ctx.workspace.audit.list({ before, limit })),
})
