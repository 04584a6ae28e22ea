import { randomUUID } from 'node:crypto'
import { mkdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { projectRoot } from '../root.ts'
import { FileBackups } from './backups/backups.ts'
import { StoreError } from './errors.ts'
import { PrismaClient } from './generated/client.ts'
import { type Migrated, migrate } from './migrate.ts'
import { DatabaseEntrance } from './people/entrance.ts'
import { Sessions } from './people/sessions.ts'
import { Intake } from './records/intake.ts'
import { RecordLogs } from './records/log.ts'
import type { DirectConnection } from './sqlite/direct.ts'
import { SqliteFactory } from './sqlite/factory.ts'
import type { Setting } from './sqlite/pragmas.ts'
import type { BackupStore, EntranceStore, Store, StoreHealth, WorkspaceStore } from './types.ts'
import { DatabaseWorkspace } from './workspace.ts'

export interface OpenOptions {
  now?: () => Date
  /** The folder of migrations; the program's own unless a test says otherwise. */
  migrations?: string
  /** SQL that each connection begins with, for tests. */
  further?: string | undefined
  /** Told what was changed in the database before it was opened. */
  migrated?: (what: Migrated) => void
}

/** Opens the database at `file:…`, brought to the newest schema. Throws a StoreError whose message is for the user. */
export async function openStore(url: string, options: OpenOptions = {}): Promise<Store> {
  const now = options.now ?? (() => new Date())
  const file = fileOf(url)
  mkdirSync(dirname(file), { recursive: true })
  const migrated = await migrate(file, options.migrations ?? join(projectRoot(), 'prisma', 'migrations'), now)
  options.migrated?.(migrated)
  const factory = new SqliteFactory(file, options.further)
  const client = new PrismaClient({ adapter: factory, transactionOptions: { maxWait: 30_000, timeout: 10_000 } })
  await client.$connect()
  return new DatabaseStore(client, { direct: factory.direct, backups: new FileBackups(file, now), now })
}

/** The path in a `file:` address; a relative one counts from the project's folder. */
export function fileOf(url: string): string {
  if (!url.startsWith('file:'))
    throw new StoreError(`DATABASE_URL must begin with file:, got ${JSON.stringify(url.split(':')[0])}.`)
  const path = url.slice('file:'.length)
  return path.startsWith('/') ? path : join(projectRoot(), path)
}

const synchronousModes = ['OFF', 'NORMAL', 'FULL', 'EXTRA']

interface Parts {
  direct: DirectConnection
  backups: BackupStore
  now: () => Date
}

class DatabaseStore implements Store {
  readonly #client: PrismaClient
  readonly #now: () => Date
  readonly #sessions = new Sessions()
  readonly #direct: DirectConnection
  readonly #intake: Intake
  readonly #logs = new RecordLogs()
  readonly entrance: EntranceStore
  readonly backups: BackupStore

  constructor(client: PrismaClient, { direct, backups, now }: Parts) {
    this.backups = backups
    this.#client = client
    this.#direct = direct
    this.#intake = new Intake(direct)
    this.#now = now
    this.entrance = new DatabaseEntrance(client, now, this.#sessions)
  }

  workspace(id: string): WorkspaceStore {
    return new DatabaseWorkspace(this.#client, id, {
      now: this.#now,
      sessions: this.#sessions,
      intake: this.#intake,
      logs: this.#logs,
    })
  }

  async workspaceOfRound(code: string): Promise<string | null> {
    const rounds = await this.#client.round.findMany({ where: { code, removed: false } })
    // A round that came in from a file may have the code of another; the one that was held here is meant.
    const meant = rounds.find(({ broughtAt }) => broughtAt === null) ?? rounds[0]
    return meant?.workspaceId ?? null
  }

  async ensureWorkspace(name: string): Promise<string> {
    const { id } = await this.#client.workspace.upsert({
      where: { name },
      create: { id: randomUUID(), name, createdAt: this.#now() },
      update: {},
    })
    return id
  }

  async isEmpty(): Promise<boolean> {
    return (await this.#client.document.findFirst({ select: { id: true } })) === null
  }

  async health(): Promise<StoreHealth> {
    const read = async (name: Setting) => {
      const [row] = await this.#client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`)
      return String(Object.values(row ?? {})[0])
    }
    const mode = Number(await read('synchronous'))
    return {
      engine: 'sqlite',
      journalMode: await read('journal_mode'),
      synchronous: synchronousModes[mode] ?? String(mode),
    }
  }

  async close(): Promise<void> {
    this.#direct.close()
    await this.#intake.close()
    await this.#client.$disconnect()
  }
}
