import { randomUUID } from 'node:crypto'
import { type Database, peopleTurn } from './database.ts'
import { DatabaseEntrance } from './people/entrance.ts'
import { Sessions } from './people/sessions.ts'
import { Intake } from './records/intake.ts'
import { RecordLogs, rewritten } from './records/log.ts'
import type { EntranceStore, Store, StoreHealth, WorkspaceStore } from './types.ts'
import { DatabaseWorkspace } from './workspace.ts'

const mostWorkspaces = 500

/** The store on either engine. */
export class DatabaseStore implements Store {
  readonly #database: Database
  readonly #now: () => Date
  readonly #sessions: Sessions
  readonly #intake: Intake
  readonly #logs = new RecordLogs()
  /** They hold no state of their own, and each request asks for one. */
  readonly #workspaces = new Map<string, WorkspaceStore>()
  readonly entrance: EntranceStore

  constructor(database: Database, now: () => Date) {
    this.#database = database
    this.#intake = new Intake(database.takeIn)
    this.#sessions = new Sessions(database)
    this.#now = now
    database.signals.hear(rewritten, () => this.#logs.forget())
    database.signals.missed(() => this.#logs.forget())
    this.entrance = new DatabaseEntrance(database.inTurn(peopleTurn), now, this.#sessions)
  }

  get shared(): boolean {
    return this.#database.shared
  }

  get backups() {
    return this.#database.backups
  }

  get queue() {
    return this.#database.queue
  }

  get signals() {
    return this.#database.signals
  }

  workspace(id: string): WorkspaceStore {
    const before = this.#workspaces.get(id)
    if (before) return before
    const made = new DatabaseWorkspace(this.#database, id, {
      now: this.#now,
      sessions: this.#sessions,
      intake: this.#intake,
      logs: this.#logs,
    })
    if (this.#workspaces.size >= mostWorkspaces) this.#workspaces.clear()
    this.#workspaces.set(id, made)
    return made
  }

  async workspaceOfRound(code: string): Promise<string | null> {
    const rounds = await this.#database.client.round.findMany({ where: { code, removed: false } })
    // A round that came in from a file may have the code of another; the one that was held here is meant.
    const meant = rounds.find(({ broughtAt }) => broughtAt === null) ?? rounds[0]
    return meant?.workspaceId ?? null
  }

  async workspaceNamed(name: string): Promise<string | null> {
    const { workspace } = this.#database.client
    return (await workspace.findUnique({ where: { name }, select: { id: true } }))?.id ?? null
  }

  async ensureWorkspace(name: string): Promise<string> {
    const found = await this.workspaceNamed(name)
    if (found !== null) return found
    try {
      return (
        await this.#database.client.workspace.create({ data: { id: randomUUID(), name, createdAt: this.#now() } })
      ).id
    } catch (error) {
      // Somebody made it in between.
      const made = await this.workspaceNamed(name)
      if (made !== null) return made
      throw error
    }
  }

  async isEmpty(): Promise<boolean> {
    return (await this.#database.client.document.findFirst({ select: { id: true } })) === null
  }

  alone<Result>(name: string, work: () => Promise<Result>): Promise<Result> {
    return this.#database.alone(name, work)
  }

  health(): Promise<StoreHealth> {
    return this.#database.health()
  }

  answers(): Promise<void> {
    return this.#database.answers()
  }

  close(): Promise<void> {
    return this.#database.close()
  }
}
