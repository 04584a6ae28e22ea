import { randomUUID } from 'node:crypto'
import type { Role } from '../../model/scouting/roles.ts'
import type { PrismaClient } from '../generated/client.ts'
import { invitationOf } from './rows.ts'
import { hashOfToken, newToken } from './tokens.ts'
import type { InvitationStore } from './types.ts'

/** Invitations older than that are listed no more. */
const listedDays = 60

/** The invitations of one workspace. */
export class DatabaseInvitations implements InvitationStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  async create(of: {
    role: Role
    nickname: string | null
    event: string | null
    createdBy: string | null
    hours: number
  }) {
    const { hours, ...kept } = of
    const [token, createdAt] = [newToken(), this.#now()]
    const expiresAt = new Date(createdAt.getTime() + hours * 3_600_000)
    const head = { workspaceId: this.#workspaceId, id: randomUUID(), tokenHash: hashOfToken(token) }
    const row = await this.#client.invitation.create({ data: { ...head, ...kept, createdAt, expiresAt } })
    return { token, invitation: invitationOf(row) }
  }

  async list() {
    const createdAt = { gt: new Date(this.#now().getTime() - listedDays * 86_400_000) }
    const rows = await this.#client.invitation.findMany({
      where: { workspaceId: this.#workspaceId, createdAt },
      orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    })
    return rows.map(invitationOf)
  }

  async withdraw(id: string) {
    const open = { usedAt: null, withdrawnAt: null }
    const { count } = await this.#client.invitation.updateMany({
      where: { workspaceId: this.#workspaceId, id, ...open },
      data: { withdrawnAt: this.#now() },
    })
    return count > 0
  }
}
