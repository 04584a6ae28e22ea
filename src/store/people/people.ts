import type { Role } from '../../model/scouting/roles.ts'
import type { By } from '../event/types.ts'
import type { PrismaClient } from '../generated/client.ts'
import { type Client, signOut } from './devices.ts'
import { eraseAccount, eraseNames } from './personal/erase.ts'
import { readHeld } from './personal/held.ts'
import { deviceOf, folded, personOf } from './rows.ts'
import type { Sessions } from './sessions.ts'
import type { Changed, PeopleStore } from './types.ts'

/** All that somebody recorded in a season is read, or looked through (ms). */
const options = { timeout: 60_000 }

interface With {
  now: () => Date
  sessions: Sessions
  /** The client in whose turns all else of the workspace is written. */
  writing: PrismaClient
  /** Told that records which were there have changed. */
  rewritten(): Promise<void>
}

/** The people of one workspace: its id stands in every query because it is fixed here. */
export class DatabasePeople implements PeopleStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date
  readonly #sessions: Sessions
  readonly #with: Pick<With, 'writing' | 'rewritten'>

  constructor(client: PrismaClient, workspaceId: string, { now, sessions, ...rest }: With) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
    this.#sessions = sessions
    this.#with = rest
  }

  async list() {
    const where = { workspaceId: this.#workspaceId }
    const rows = await this.#client.person.findMany({ where, orderBy: [{ nickname: 'asc' }, { id: 'asc' }] })
    return rows.map(personOf)
  }

  async get(id: string) {
    const row = await this.#client.person.findUnique({ where: this.#key(id) })
    return row && personOf(row)
  }

  changeRole(id: string, role: Role): Promise<Changed> {
    return this.#change(async (client) => {
      const person = await client.person.findUnique({ where: this.#key(id) })
      if (!person || person.endedAt !== null) return 'missing'
      if (role !== 'lead' && (await this.#isLastLead(client, id))) return 'lastLead'
      await client.person.update({ where: this.#key(id), data: { role } })
      return 'done'
    })
  }

  end(id: string, undo = false): Promise<Changed> {
    return this.#change(async (client) => {
      const person = await client.person.findUnique({ where: this.#key(id) })
      if (!person) return 'missing'
      if (!undo && (await this.#isLastLead(client, id))) return 'lastLead'
      const now = this.#now()
      await client.person.update({ where: this.#key(id), data: { endedAt: undo ? null : now } })
      if (!undo) await signOut(client, { workspaceId: this.#workspaceId, person: id }, now)
      return 'done'
    })
  }

  async passphraseHash(id: string) {
    const row = await this.#client.person.findUnique({ where: this.#key(id), select: { passphraseHash: true } })
    return row?.passphraseHash ?? null
  }

  async setPassphrase(id: string, passphraseHash: string) {
    await this.#client.person.update({ where: this.#key(id), data: { passphraseHash } })
  }

  async devices() {
    const rows = await this.#client.device.findMany({
      where: { workspaceId: this.#workspaceId },
      include: { owner: true },
      orderBy: [{ lastSeenAt: 'desc' }, { id: 'asc' }],
    })
    return rows.map(deviceOf)
  }

  renameDevice(id: string, name: string) {
    return this.#change(async (client) => {
      const where = { workspaceId: this.#workspaceId, id }
      return (await client.device.updateMany({ where, data: { name } })).count > 0
    })
  }

  revoke(id: string) {
    return this.#change(async (client) => {
      const where = { workspaceId: this.#workspaceId, id }
      await signOut(client, where, this.#now())
      return (await client.device.count({ where })) > 0
    })
  }

  revokeAll(person: string, but?: string) {
    const where = { workspaceId: this.#workspaceId, person, ...(but === undefined ? {} : { id: { not: but } }) }
    return this.#change((client) => signOut(client, where, this.#now()))
  }

  async report(id: string, { unsent, app }: { unsent: number; app?: string | undefined }) {
    const data = { unsent, lastSeenAt: this.#now(), ...(app === undefined ? {} : { app }) }
    await this.#client.device.updateMany({ where: { workspaceId: this.#workspaceId, id, revokedAt: null }, data })
  }

  held(id: string) {
    const of = { workspaceId: this.#workspaceId, person: id }
    return this.#client.$transaction((client) => readHeld(client, of), options)
  }

  async erase(id: string, { nickname, by }: { nickname: string; by: By }) {
    const asked = await this.#mayErase(this.#client, id, nickname)
    if (typeof asked === 'string') return asked
    // The names first: whoever is interrupted between the two still has the account to ask for again.
    const names = await this.#with.writing.$transaction(
      (client) => eraseNames(client, this.#workspaceId, asked.nickname),
      options,
    )
    if (names.driven > 0) await this.#with.rewritten()
    return this.#sessions.during(() =>
      this.#client.$transaction(async (client) => {
        const person = await this.#mayErase(client, id, nickname)
        if (typeof person === 'string') return person
        return { ...names, records: await eraseAccount(client, person, { by, now: this.#now() }) }
      }, options),
    )
  }

  async #mayErase(client: Client, id: string, nickname: string) {
    const person = await client.person.findUnique({ where: this.#key(id) })
    if (!person) return 'missing'
    if (folded(person.nickname) !== folded(nickname)) return 'otherName'
    return (await this.#isLastLead(client, id)) ? 'lastLead' : person
  }

  /** Without a lead who can sign in, nobody could invite one. */
  async #isLastLead(client: Client, id: string): Promise<boolean> {
    const leads = await client.person.findMany({
      where: { workspaceId: this.#workspaceId, role: 'lead', endedAt: null, passphraseHash: { not: null } },
      select: { id: true },
    })
    return leads.length === 1 && leads[0]?.id === id
  }

  #change<Result>(change: (client: Client) => Promise<Result>): Promise<Result> {
    return this.#sessions.during(() => this.#client.$transaction(change))
  }

  #key(id: string) {
    return { workspaceId_id: { workspaceId: this.#workspaceId, id } }
  }
}
