import { randomUUID } from 'node:crypto'
import type { Role } from '../../model/scouting/roles.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { ClaimLinkModel, InvitationModel, PersonModel } from '../generated/models.ts'
import { type Client, enterDevice } from './devices.ts'
import { folded } from './rows.ts'
import type { Sessions } from './sessions.ts'
import { hashOfToken, newToken } from './tokens.ts'
import {
  type EnteringDevice,
  type EntranceStore,
  type LinkRefusal,
  type Session,
  sessionDays,
  type Welcome,
} from './types.ts'

/** A device's last sign of life is written down at most so often (ms). */
const seenEvery = 60_000

/** Ways in. What is good once is marked as used in the transaction that lets somebody in. */
export class DatabaseEntrance implements EntranceStore {
  readonly #client: PrismaClient
  readonly #now: () => Date
  readonly #sessions: Sessions

  constructor(client: PrismaClient, now: () => Date, sessions: Sessions) {
    this.#client = client
    this.#now = now
    this.#sessions = sessions
  }

  async isClaimed() {
    return (await this.#client.person.findFirst({ select: { id: true } })) !== null
  }

  claimLink(workspaceId: string, hours: number) {
    const [token, createdAt] = [newToken(), this.#now()]
    const expiresAt = new Date(createdAt.getTime() + hours * 3_600_000)
    return this.#client.$transaction(async (transaction) => {
      await transaction.claimLink.deleteMany({ where: { workspaceId, usedAt: null } })
      await transaction.claimLink.create({ data: { tokenHash: hashOfToken(token), workspaceId, createdAt, expiresAt } })
      return { token, expiresAt: expiresAt.toISOString() }
    })
  }

  async claimRefusal(token: string) {
    return this.#refusal(await this.#client.claimLink.findUnique({ where: { tokenHash: hashOfToken(token) } }))
  }

  claim(token: string, as: { nickname: string; passphraseHash: string; device: EnteringDevice }) {
    const tokenHash = hashOfToken(token)
    return this.#change(async (client) => {
      const link = await client.claimLink.findUnique({ where: { tokenHash } })
      const refused = this.#refusal(link)
      if (refused) return { refused }
      const { workspaceId } = link as ClaimLinkModel
      if (await personCalled(client, workspaceId, as.nickname)) return { refused: 'nicknameTaken' as const }
      const now = this.#now()
      await client.claimLink.update({ where: { tokenHash }, data: { usedAt: now } })
      const person = await client.person.create({
        data: { ...newPerson(workspaceId, as.nickname, now), role: 'lead', passphraseHash: as.passphraseHash },
      })
      return enterDevice(client, person, { device: as.device, now })
    })
  }

  async welcome(token: string): Promise<Welcome | { refused: LinkRefusal }> {
    const where = { tokenHash: hashOfToken(token) }
    const found = await this.#client.invitation.findUnique({ where, include: { workspace: true } })
    const refused = this.#refusal(found)
    if (!found || refused) return { refused: refused ?? 'linkUnknown' }
    const { role, nickname, event, workspaceId } = found
    const known = nickname === null ? null : await personCalled(this.#client, workspaceId, nickname)
    const kept = known && known.endedAt === null ? known.role : role
    return { workspace: found.workspace.name, role: kept as Role, nickname, event }
  }

  accept(token: string, as: { nickname: string | null; passphraseHash: string | null; device: EnteringDevice }) {
    const where = { tokenHash: hashOfToken(token) }
    return this.#change(async (client) => {
      const invitation = await client.invitation.findUnique({ where })
      const refused = this.#refusal(invitation)
      if (refused) return { refused }
      const joined = await this.#join(client, invitation as InvitationModel, as)
      if ('refused' in joined) return joined
      const now = this.#now()
      await client.invitation.update({ where, data: { usedAt: now, usedBy: joined.id } })
      return enterDevice(client, joined, { device: as.device, now })
    })
  }

  async account(workspace: string, nickname: string) {
    const found = await this.#client.workspace.findUnique({ where: { name: workspace }, select: { id: true } })
    const person = found && (await personCalled(this.#client, found.id, nickname))
    if (!person || person.endedAt !== null) return null
    return { workspaceId: person.workspaceId, person: person.id, passphraseHash: person.passphraseHash }
  }

  enter(workspaceId: string, person: string, device: EnteringDevice) {
    return this.#change(async (client) => {
      const owner = await client.person.findUnique({ where: { workspaceId_id: { workspaceId, id: person } } })
      if (!owner || owner.endedAt !== null) return null
      return enterDevice(client, owner, { device, now: this.#now() })
    })
  }

  async session(token: string): Promise<Session | null> {
    const hash = hashOfToken(token)
    const known = this.#sessions.get(hash) ?? (await this.#sessions.look(hash, () => this.#find(hash)))
    if (!known) return null
    const now = this.#now().getTime()
    if (now - known.seenAt > sessionDays * 86_400_000) return null
    if (now - known.seenAt > seenEvery) await this.#seen(known, now)
    return known.session
  }

  async #seen(known: { session: Session; seenAt: number }, now: number): Promise<void> {
    known.seenAt = now
    const { workspaceId, device } = known.session
    const where = { workspaceId, id: device.id, revokedAt: null }
    await this.#client.device.updateMany({ where, data: { lastSeenAt: new Date(now) } })
  }

  async #find(tokenHash: string) {
    const row = await this.#client.device.findUnique({ where: { tokenHash }, include: { owner: true } })
    if (!row || row.revokedAt !== null || row.owner.endedAt !== null) return null
    const { workspaceId } = row
    const { name: workspace } = await this.#client.workspace.findUniqueOrThrow({ where: { id: workspaceId } })
    const { id, nickname, role } = row.owner
    const person = { id, nickname, role: role as Role }
    const session: Session = { workspaceId, workspace, person, device: { id: row.id, name: row.name } }
    return { session, seenAt: row.lastSeenAt.getTime() }
  }

  /** An invitation with a nickname brings its person another device, or back; one without makes somebody new. */
  async #join(
    client: Client,
    { workspaceId, nickname: given, role }: InvitationModel,
    as: { nickname: string | null; passphraseHash: string | null },
  ): Promise<PersonModel | { refused: 'nicknameTaken' | 'nicknameMissing' }> {
    const nickname = given ?? as.nickname
    if (nickname === null) return { refused: 'nicknameMissing' }
    const { passphraseHash } = as
    const known = await personCalled(client, workspaceId, nickname)
    if (!known) {
      return client.person.create({ data: { ...newPerson(workspaceId, nickname, this.#now()), role, passphraseHash } })
    }
    if (given === null) return { refused: 'nicknameTaken' }
    const back = known.endedAt === null ? {} : { endedAt: null, role }
    const data = passphraseHash === null ? back : { ...back, passphraseHash }
    return client.person.update({ where: { workspaceId_id: { workspaceId, id: known.id } }, data })
  }

  #refusal(link: { usedAt: Date | null; expiresAt: Date; withdrawnAt?: Date | null } | null): LinkRefusal | null {
    if (!link) return 'linkUnknown'
    if (link.usedAt !== null) return 'linkUsed'
    if (link.withdrawnAt) return 'linkWithdrawn'
    return link.expiresAt <= this.#now() ? 'linkExpired' : null
  }

  #change<Result>(change: (client: Client) => Promise<Result>): Promise<Result> {
    return this.#sessions.during(() => this.#client.$transaction(change))
  }
}

const newPerson = (workspaceId: string, nickname: string, createdAt: Date) => ({
  workspaceId,
  id: randomUUID(),
  nickname: nickname.normalize('NFKC').trim(),
  createdAt,
})

/** Whoever is called so in the workspace, members who have left too. */
async function personCalled(
  client: Pick<Client, 'person'>,
  workspaceId: string,
  nickname: string,
): Promise<PersonModel | null> {
  const people = await client.person.findMany({ where: { workspaceId } })
  return people.find((person) => folded(person.nickname) === folded(nickname)) ?? null
}
