import type { PrismaClient } from '../generated/client.ts'
import { auditOf } from './rows.ts'
import type { AuditNote, AuditStore } from './types.ts'

/** What changed the data of one workspace. */
export class DatabaseAudit implements AuditStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  async note({ detail, ...entry }: AuditNote) {
    const data = { ...entry, workspaceId: this.#workspaceId, at: this.#now(), detail: JSON.stringify(detail) }
    await this.#client.auditEntry.create({ data })
  }

  async list({ before, limit }: { before?: number | undefined; limit: number }) {
    const rows = await this.#client.auditEntry.findMany({
      where: { workspaceId: this.#workspaceId, ...(before === undefined ? {} : { sequence: { lt: before } }) },
      orderBy: { sequence: 'desc' },
      take: limit,
    })
    return rows.map(auditOf)
  }
}
