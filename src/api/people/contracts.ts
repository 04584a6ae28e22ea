import * as z from 'zod'
import { roles } from '../../model/scouting/roles.ts'
import { id } from '../contracts/index.ts'
import { longest } from './passphrase.ts'

const text = z.string()
const moment = text.describe('ISO 8601')

export const role = z.enum(roles).describe('What somebody may do')
export const nickname = z
  .string()
  .trim()
  .min(1)
  .max(40)
  .describe('How the team calls somebody; no e-mail, no full name')
export const passphrase = z
  .string()
  .min(1)
  .max(longest * 4)
  .describe('At least 12 characters of whichever kind')
export const deviceName = z.string().trim().min(1).max(60).describe('What the device is called in lists')
export const token = z.string().min(20).max(100).describe('From the link, behind its #')
export const enteringDevice = z
  .strictObject({ id: id.optional().describe('What this device was called before'), name: deviceName })
  .describe('The device that is signed in; its id is answered, and may be another one')

const person = z.strictObject({ id: text, nickname: text, role })

export const sessionAnswer = z
  .strictObject({
    claimed: z.boolean().describe('Whether the server belongs to somebody'),
    workspace: text.nullable().describe('Name of the team’s workspace; null: nobody is signed in'),
    person: person.nullable(),
    device: z.strictObject({ id: text, name: text }).nullable(),
    role: role.nullable().describe('Lead, while the server belongs to nobody; null: nobody is signed in'),
  })
  .meta({ id: 'Session' })

export const entered = z.strictObject({ ...sessionAnswer.shape, event: text.nullable() })

export const claimRequest = z.strictObject({ token, nickname, passphrase, device: enteringDevice })

export const signInRequest = z.strictObject({
  workspace: z.string().min(1).max(100).optional().describe('Name of the workspace, where it is not the first one'),
  nickname,
  passphrase,
  device: enteringDevice,
})

export const signOutRequest = z.strictObject({
  everywhere: z.boolean().optional().describe('On all devices of whoever asks'),
})

export const passphraseRequest = z.strictObject({
  current: passphrase.optional().describe('The present one, if there is one'),
  passphrase,
})

export const acceptRequest = z.strictObject({
  token,
  device: enteringDevice,
  nickname: nickname.optional().describe('Where the invitation has none'),
  passphrase: passphrase.optional().describe('For a lead, to sign in with'),
})

export const welcome = z
  .strictObject({
    workspace: text,
    role,
    nickname: text.nullable().describe('Null: to be chosen'),
    event: text.nullable(),
    needsPassphrase: z.boolean(),
  })
  .meta({ id: 'Welcome', description: 'What an invitation is for' })

export const member = z
  .strictObject({
    id: text,
    nickname: text,
    role,
    hasPassphrase: z.boolean().describe('Whether this person can sign in by passphrase'),
    createdAt: moment,
    endedAt: moment.nullable(),
  })
  .meta({ id: 'Member' })

export const namedPerson = z
  .strictObject({ id: text, nickname: text.nullable().describe('Null: a lead has removed it') })
  .meta({ id: 'NamedPerson', description: 'What somebody is called whose id stands in records' })

export const memberDevice = z
  .strictObject({
    id: text,
    person: text,
    nickname: text,
    name: text,
    createdAt: moment,
    lastSeenAt: moment.describe('ISO 8601, to a minute'),
    unsent: z.number().describe('Records that it last said it still holds'),
    app: text.nullable().describe('Version of the program on it'),
    revokedAt: moment.nullable().describe('When it was signed out'),
  })
  .meta({ id: 'MemberDevice' })

export const invitation = z
  .strictObject({
    id: text,
    role,
    nickname: text.nullable(),
    event: text.nullable(),
    createdBy: text.nullable(),
    createdAt: moment,
    expiresAt: moment,
    usedAt: moment.nullable(),
    usedBy: text.nullable().describe('Id of the person'),
    withdrawnAt: moment.nullable(),
  })
  .meta({ id: 'Invitation' })

/** Longest life of an invitation: two weeks (h). */
export const mostHours = 336
/** Invitations of one request at most. */
export const mostInvited = 60

export const inviteRequest = z.strictObject({
  role,
  event: id.optional().describe('Id of the event that it leads to'),
  nickname: nickname.optional().describe('For whom; a member of that name gets another device by it'),
  hours: z.int().min(1).max(mostHours).describe('How long it is good'),
  count: z.int().min(1).max(mostInvited).optional().describe('How many; 1 where nothing is said'),
})

export const invited = z.array(
  z.strictObject({ invitation, token: text.describe('Told this once; the link is /join#token') }),
)

export const auditEntry = z
  .strictObject({
    sequence: z.number(),
    at: moment,
    person: text.nullable(),
    device: text.nullable(),
    action: text.describe('Name of the procedure'),
    subject: text.describe('Ids of what it was about'),
    detail: z.record(text, z.unknown()),
  })
  .meta({ id: 'AuditEntry' })

export const auditRequest = z.strictObject({
  before: z.int().min(1).optional().describe('Entries before this sequence'),
  limit: z.int().min(1).max(200).optional().describe('50 where nothing is said'),
})
