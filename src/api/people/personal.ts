import * as z from 'zod'
import type { PersonalData } from '../../store/types.ts'
import { id } from '../contracts/index.ts'
import { ApiError } from '../errors.ts'
import { fileName } from '../exchange/fileName.ts'
import { say } from '../sentences.ts'
import { procedure } from '../trpc.ts'
import { may } from '../who.ts'
import { refuseUnchanged, tellPeople } from './changes.ts'
import { auditEntry, invitation, member, memberDevice, nickname } from './contracts.ts'

const person = z.strictObject({ person: id.describe('Id of the person') })
const text = z.string()
const moment = text.describe('ISO 8601')
const place = { event: text, match: text }
const anything = z.unknown()

/** Everything that is held of one person. Guesses of rounds are held without whose they are, so that none are here. */
const personalData = z
  .strictObject({
    format: z.literal(1),
    madeAt: moment,
    person: member,
    devices: z.array(memberDevice.omit({ nickname: true, person: true })),
    invitations: z.array(invitation).describe('That name the person, that it took up, or that it made'),
    records: z.array(anything).describe('What it recorded or handed in: observations, visits, rankings, photos'),
    apart: z.array(anything).describe('The same, kept apart until a lead decides'),
    driven: z
      .array(z.strictObject({ id: text, event: text, match: text.nullable() }))
      .describe('Records in which its nickname was typed as the driver’s'),
    results: z.array(z.strictObject({ ...place, revision: z.int(), enteredAt: moment, result: anything })),
    assignments: z.array(z.strictObject({ ...place, alliance: text, position: z.int(), since: moment })),
    choices: z.array(
      z.strictObject({ ...place, team: text, record: text.nullable(), reason: text.nullable(), chosenAt: moment }),
    ),
    drills: z.array(z.strictObject({ event: text, id: text, startedAt: moment })),
    plans: z.array(z.strictObject({ ...place, id: text, agreedAt: moment, body: anything })),
    selection: z.array(z.strictObject({ event: text, id: text, writtenAt: moment, line: anything })),
    typed: z
      .array(
        z.strictObject({ kind: z.enum(['decision', 'comparison', 'event']), id: text, name: text, revision: z.int() }),
      )
      .describe('Documents in which its nickname stands as who agreed, objected, set a number or drove'),
    audit: z.array(auditEntry).describe('What it changed, and what was changed about it'),
  })
  .meta({ id: 'PersonalData' })

/** What a person may have, and what a lead may take away. */
export const personalProcedures = {
  data: procedure
    .meta({
      endpoint: {
        method: 'GET',
        path: '/api/people/{person}/data',
        may: may.member,
        summary: 'Everything that is held of a person, as a file: for that person, and for leads',
        answer: personalData,
        sends: {
          type: 'application/json',
          file: (answer) => {
            const data = answer as z.infer<typeof personalData>
            return { name: `person-${fileName(data.person.nickname)}.json`, body: [JSON.stringify(data, null, 1)] }
          },
        },
        errors: ['malformed', 'notFound'],
      },
    })
    .input(person)
    .query(async ({ input, ctx }) => {
      // Of others one learns nothing, not even whether they are there.
      const mine = ctx.who.role === 'lead' || ctx.who.person === input.person
      const held: PersonalData | null = mine ? await ctx.workspace.people.held(input.person) : null
      if (!held) return refuseUnchanged('missing', input.person)
      return { format: 1 as const, madeAt: new Date().toISOString(), ...held }
    }),

  erase: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/people/{person}/erase',
        may: may.lead,
        // The store writes it down in the same commit, without the name.
        audit: false,
        summary:
          'Deletes a person for good: account, devices and names go, records stay by an id that is nobody’s. Copies of the database keep the person until they are removed',
        answer: z.strictObject({
          records: z.int().describe('Records that stay'),
          driven: z.int().describe('Records in which another name stands now as the driver’s'),
          typed: z.int().describe('Revisions of documents out of which the nickname was taken'),
        }),
        errors: ['malformed', 'notFound', 'conflict', 'tooLarge', 'notJson'],
      },
    })
    .input(
      z.strictObject({
        ...person.shape,
        nickname: nickname.describe('Of that person, so that nobody is meant by mistake'),
      }),
    )
    .mutation(async ({ input, ctx }) => {
      const by = { person: ctx.who.person, device: ctx.who.device }
      const outcome = await ctx.workspace.people.erase(input.person, { nickname: input.nickname, by })
      if (outcome === 'otherName') {
        const said = say({ code: 'otherNickname', parts: { nickname: input.nickname } })
        throw new ApiError({ code: 'conflict', ...said, path: ['nickname'] })
      }
      if (typeof outcome === 'string') return refuseUnchanged(outcome, input.person)
      tellPeople(ctx)
      return outcome
    }),
}
