import type { Role } from '../../model/scouting/roles.ts'
import type { By } from '../event/types.ts'
import type { ApartRecord, StoredRecord } from '../records/types.ts'

/** A device that was not seen for so many days is signed out. */
export const sessionDays = 30

export interface Person {
  id: string
  nickname: string
  role: Role
  /** Whether this person can sign in by passphrase. */
  hasPassphrase: boolean
  /** ISO 8601. */
  createdAt: string
  endedAt: string | null
}

export interface Device {
  id: string
  /** Id of the person who is signed in on it. */
  person: string
  nickname: string
  name: string
  createdAt: string
  /** To a minute. */
  lastSeenAt: string
  /** Records that it said it still holds. */
  unsent: number
  /** Version of the program that it runs. */
  app: string | null
  /** When it was signed out, by its person or by a lead. */
  revokedAt: string | null
}

export interface Invitation {
  id: string
  role: Role
  nickname: string | null
  /** Id of the event that it leads to. */
  event: string | null
  createdBy: string | null
  createdAt: string
  expiresAt: string
  usedAt: string | null
  usedBy: string | null
  withdrawnAt: string | null
}

/** Who is signed in, where and on what. */
export interface Session {
  workspaceId: string
  workspace: string
  person: { id: string; nickname: string; role: Role }
  device: { id: string; name: string }
}

/** The device that somebody signs in on. */
export interface EnteringDevice {
  /** What it was called before, so that it stays the same device; another one is made where that is not its to claim. */
  id?: string | undefined
  name: string
  /** Id of the device whose session this request bears. */
  signedIn?: string | null
}

/** Signed in: the token is told once and kept hashed. */
export interface Entered {
  token: string
  session: Session
}

export type Refused<Why extends string> = { refused: Why }
export type LinkRefusal = 'linkUnknown' | 'linkUsed' | 'linkExpired' | 'linkWithdrawn'

/** What somebody may know who holds an open invitation. */
export interface Welcome {
  workspace: string
  role: Role
  nickname: string | null
  event: string | null
}

export interface Account {
  workspaceId: string
  person: string
  passphraseHash: string | null
}

/** Ways into any workspace: what a token, or a nickname, opens. Tokens are random and kept as SHA-256 only. */
export interface EntranceStore {
  /** Whether any workspace belongs to somebody. */
  isClaimed(): Promise<boolean>
  /** A new link to become a lead of a workspace; earlier ones are void from now on. */
  claimLink(workspaceId: string, hours: number): Promise<{ token: string; expiresAt: string }>
  /** Null: the link is good. */
  claimRefusal(token: string): Promise<LinkRefusal | null>
  claim(
    token: string,
    as: { nickname: string; passphraseHash: string; device: EnteringDevice },
  ): Promise<Entered | Refused<LinkRefusal | 'nicknameTaken'>>
  welcome(token: string): Promise<Welcome | Refused<LinkRefusal>>
  accept(
    token: string,
    as: { nickname: string | null; passphraseHash: string | null; device: EnteringDevice },
  ): Promise<Entered | Refused<LinkRefusal | 'nicknameTaken' | 'nicknameMissing'>>
  /** A member of the workspace with that name; letters may be small or capital. */
  account(workspace: string, nickname: string): Promise<Account | null>
  /** Signs somebody in who has shown to be it. Null where the person has left. */
  enter(workspaceId: string, person: string, device: EnteringDevice): Promise<Entered | null>
  /** Null where nobody is signed in by this token any more. */
  session(token: string): Promise<Session | null>
}

/** A field that somebody typed a name into, and where. */
export interface TypedName {
  /** Kind of the document. */
  kind: 'decision' | 'comparison' | 'event'
  id: string
  name: string
  revision: number
}

/** A record of a run that somebody drove, by the name that was typed. */
export interface Driven {
  id: string
  event: string
  match: string | null
}

/** Everything that is held of a person. */
export interface PersonalData {
  person: Person
  devices: Omit<Device, 'nickname' | 'person'>[]
  /** Those that name the person, that it took up, or that it made. */
  invitations: Invitation[]
  /** Observations, visits, rankings and photos that it made or handed in. */
  records: StoredRecord[]
  /** The same that were kept apart. */
  apart: ApartRecord[]
  driven: Driven[]
  results: { event: string; match: string; revision: number; enteredAt: string; result: unknown }[]
  assignments: { event: string; match: string; alliance: string; position: number; since: string }[]
  choices: {
    event: string
    match: string
    team: string
    record: string | null
    reason: string | null
    chosenAt: string
  }[]
  drills: { event: string; id: string; startedAt: string }[]
  plans: { event: string; match: string; id: string; agreedAt: string; body: unknown }[]
  selection: { event: string; id: string; writtenAt: string; line: unknown }[]
  /** Documents in which its nickname stands as who agreed, objected, set a number or drove. */
  typed: TypedName[]
  audit: AuditEntry[]
}

/** What was done to a person's data; records stay, without the person. */
export interface Erased {
  /** Records that stay by somebody whom nobody knows. */
  records: number
  /** Records in which another name stands now as the driver's. */
  driven: number
  /** Revisions of documents out of which the nickname was taken. */
  typed: number
}

export type Changed = 'done' | 'missing' | 'lastLead'

/** The people of one workspace and their devices. A change of them acts on the next request. */
export interface PeopleStore {
  list(): Promise<Person[]>
  get(id: string): Promise<Person | null>
  changeRole(id: string, role: Role): Promise<Changed>
  /** Ends a membership, and the person's sessions; `undo` takes the person back, who then signs in anew. */
  end(id: string, undo?: boolean): Promise<Changed>
  passphraseHash(id: string): Promise<string | null>
  setPassphrase(id: string, hash: string): Promise<void>
  devices(): Promise<Device[]>
  renameDevice(id: string, name: string): Promise<boolean>
  /** Ends the session of a device. False where there is no such device. */
  revoke(id: string): Promise<boolean>
  /** Ends all sessions of a person but that of one device. Says how many. */
  revokeAll(person: string, but?: string): Promise<number>
  /** Everything that is held of a person. Null where there is none. */
  held(id: string): Promise<PersonalData | null>
  /**
   * Makes a person a stranger: account, devices and names go, records stay by an id that belongs to nobody. Asked with the nickname, so
   * that nobody is deleted by mistake.
   */
  erase(id: string, of: { nickname: string; by: By }): Promise<Erased | Exclude<Changed, 'done'> | 'otherName'>
  /** What a device says of itself. */
  report(id: string, what: { unsent: number; app?: string | undefined }): Promise<void>
}

export interface InvitationStore {
  create(of: {
    role: Role
    nickname: string | null
    event: string | null
    createdBy: string | null
    hours: number
  }): Promise<{ token: string; invitation: Invitation }>
  /** Newest first, those of the last days. */
  list(): Promise<Invitation[]>
  /** False where there is none that is still open. */
  withdraw(id: string): Promise<boolean>
}

export interface AuditNote {
  person: string | null
  device: string | null
  /** Name of the procedure. */
  action: string
  /** Ids of what it was about. */
  subject: string
  detail: { readonly [name: string]: unknown }
}

export interface AuditEntry extends AuditNote {
  sequence: number
  /** ISO 8601. */
  at: string
}

/** What changed data. Entries are only added. */
export interface AuditStore {
  note(entry: AuditNote): Promise<void>
  /** Newest first, those before a sequence. */
  list(page: { before?: number | undefined; limit: number }): Promise<AuditEntry[]>
}
