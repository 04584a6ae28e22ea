import type { Role } from './roles.ts'

const acts: { readonly [role in Role]: string } = {
  lead: 'a lead',
  mechanism: 'a member of the mechanism group',
  scout: 'a scout',
  driveTeam: 'a member of the drive team',
  viewer: 'a viewer',
}

type Nothing = Record<string, never>

/** What is refused where people sign in and are invited, in English. */
export const peopleSentences = {
  noSession: (_: Nothing) => 'This server belongs to a team: sign in, or scan an invitation',
  notForRole: (of: { role: Role }) => `This is not for ${acts[of.role]}; a lead can change your role`,
  wrongPassphrase: (_: Nothing) => 'This nickname and this passphrase do not belong together',
  tooManyTries: (of: { seconds: number }) =>
    `There were too many wrong attempts with this nickname: try again in ${of.seconds} s`,
  tooManyRequests: (of: { seconds: number }) =>
    `This device asks more often than the server answers one: it goes on in ${of.seconds} s`,
  manySigningIn: (_: Nothing) => 'Too many people sign in at this moment: try again in a few seconds',
  linkUnknown: (_: Nothing) => 'There is no such link, or a newer one has taken its place',
  linkUsed: (_: Nothing) => 'This link has been used already: each is good once',
  linkExpired: (_: Nothing) => 'This link has expired: ask for a new one',
  linkWithdrawn: (_: Nothing) => 'A lead has withdrawn this invitation: ask for a new one',
  nicknameTaken: (of: { nickname: string }) =>
    `Somebody here is called “${of.nickname}” already: choose another nickname`,
  nicknameMissing: (_: Nothing) => 'A nickname is needed: how the team calls you',
  passphraseMissing: (_: Nothing) => 'A lead needs a passphrase to sign in with',
  shortPassphrase: (of: { least: number; got: number }) =>
    `A passphrase has at least ${of.least} characters, this one has ${of.got}: four or five words are easy to keep`,
  commonPassphrase: (_: Nothing) => 'This passphrase is among the first that anybody would try: choose another one',
  notCurrentPassphrase: (_: Nothing) => 'This is not your present passphrase',
  claimFirst: (_: Nothing) =>
    'Nobody has claimed this server yet: open the set-up link first, which the start of the server prints',
  lastLead: (_: Nothing) => 'This is the last lead with a passphrase: make somebody else a lead first',
  otherNickname: (of: { nickname: string }) =>
    `This person is not called “${of.nickname}”: type the nickname as it stands here to delete the person`,
  noPerson: (of: { id: string }) => `There is no person with the id “${of.id}”`,
  copiesElsewhere: (_: Nothing) =>
    'This server’s database is copied by its own means: whoever runs it knows where the copies are',
  noBackup: (of: { name: string }) => `There is no copy of the database called “${of.name}”`,
  noDevice: (of: { id: string }) => `There is no device with the id “${of.id}”`,
  noInvitation: (of: { id: string }) => `There is no open invitation with the id “${of.id}”`,
} as const
