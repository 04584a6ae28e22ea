import type { DocumentKind } from '../model/documents/records.ts'
import { type Database, peopleTurn } from './database.ts'
import { DatabaseEvents } from './event/events.ts'
import type { EventStore } from './event/types.ts'
import { DatabaseExchange } from './exchange/exchange.ts'
import type { ExchangeStore } from './exchange/types.ts'
import { DatabaseForecasts } from './forecasts/forecasts.ts'
import type { ForecastStore } from './forecasts/types.ts'
import type { PrismaClient } from './generated/client.ts'
import { DatabaseJobs } from './jobs/jobs.ts'
import type { JobStore } from './jobs/types.ts'
import { DatabaseAudit } from './people/audit.ts'
import { DatabaseInvitations } from './people/invitations.ts'
import { DatabasePeople } from './people/people.ts'
import type { Sessions } from './people/sessions.ts'
import type { AuditStore, InvitationStore, PeopleStore } from './people/types.ts'
import { DatabasePlans } from './plans/plans.ts'
import type { PlanStore } from './plans/types.ts'
import { readDocument } from './read.ts'
import type { Intake } from './records/intake.ts'
import { type RecordLogs, rewritten } from './records/log.ts'
import { DatabaseRecords } from './records/records.ts'
import type { RecordStore } from './records/types.ts'
import { DatabaseRounds } from './rounds/rounds.ts'
import type { RoundStore } from './rounds/types.ts'
import { summaryOf } from './rows.ts'
import { Refusal, save, saveEach } from './save.ts'
import { DatabaseSelection } from './selection/selection.ts'
import type { SelectionStore } from './selection/types.ts'
import type {
  RevisionSummary,
  SaveAllOutcome,
  SaveOutcome,
  SaveRequest,
  StoredDocument,
  WorkspaceStore,
} from './types.ts'

/** What the workspaces of one database share. */
interface Shared {
  now: () => Date
  sessions: Sessions
  intake: Intake
  logs: RecordLogs
}

/** The documents of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseWorkspace implements WorkspaceStore {
  readonly events: EventStore
  readonly exchange: ExchangeStore
  readonly forecasts: ForecastStore
  readonly plans: PlanStore
  readonly selection: SelectionStore
  readonly rounds: RoundStore
  readonly jobs: JobStore
  readonly records: RecordStore
  readonly people: PeopleStore
  readonly invitations: InvitationStore
  readonly audit: AuditStore
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(database: Database, workspaceId: string, { now, sessions, intake, logs }: Shared) {
    const client = database.inTurn(workspaceId)
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
    this.events = new DatabaseEvents(client, workspaceId, now)
    this.exchange = new DatabaseExchange(client, workspaceId, { now, engine: database.engine })
    this.forecasts = new DatabaseForecasts(client, workspaceId, now)
    this.plans = new DatabasePlans(client, workspaceId, now)
    this.selection = new DatabaseSelection(client, workspaceId, now)
    this.jobs = new DatabaseJobs(client, workspaceId, now)
    this.records = new DatabaseRecords(client, workspaceId, { now, intake, logs })
    this.rounds = new DatabaseRounds(client, workspaceId, now)
    this.people = new DatabasePeople(database.inTurn(peopleTurn), workspaceId, {
      ...{ now, sessions },
      writing: client,
      rewritten: () => database.signals.send(rewritten, ''),
    })
    this.invitations = new DatabaseInvitations(client, workspaceId, now)
    this.audit = new DatabaseAudit(client, workspaceId, now)
  }

  async list(kind: DocumentKind, withRemoved = false) {
    const rows = await this.#client.document.findMany({
      where: { workspaceId: this.#workspaceId, kind, ...(withRemoved ? {} : { removed: false }) },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
    })
    return rows.map(summaryOf)
  }

  get(kind: DocumentKind, id: string, revision?: number): Promise<StoredDocument | null> {
    return readDocument(this.#client, { workspaceId: this.#workspaceId, kind, id }, revision)
  }

  async newest(kind: DocumentKind, id: string): Promise<number | null> {
    const where = { workspaceId_kind_id: { workspaceId: this.#workspaceId, kind, id } }
    const row = await this.#client.document.findUnique({ where, select: { revision: true } })
    return row?.revision ?? null
  }

  async revisions(kind: DocumentKind, id: string): Promise<RevisionSummary[]> {
    const rows = await this.#client.revision.findMany({
      where: { workspaceId: this.#workspaceId, kind, id },
      orderBy: { revision: 'desc' },
      select: { revision: true, savedAt: true, name: true, note: true },
    })
    return rows.map((row) => ({ ...row, savedAt: row.savedAt.toISOString() }))
  }

  save(request: SaveRequest): Promise<SaveOutcome> {
    return this.#client.$transaction((transaction) => save(transaction, this.#workspaceId, request, this.#now()))
  }

  async saveAll(requests: readonly SaveRequest[]): Promise<SaveAllOutcome> {
    try {
      const saved = await this.#client.$transaction((transaction) =>
        saveEach(transaction, this.#workspaceId, requests, this.#now()),
      )
      return { saved }
    } catch (error) {
      if (error instanceof Refusal) return error.outcome
      throw error
    }
  }

  restore(kind: DocumentKind, id: string, revision: number, base: number): Promise<SaveOutcome | null> {
    return this.#client.$transaction(async (transaction) => {
      const older = await readDocument(transaction, { workspaceId: this.#workspaceId, kind, id }, revision)
      if (older === null) return null
      const note = `Revision ${revision} restored`
      const request = { kind, id, name: older.name, body: older.body, base, note }
      return save(transaction, this.#workspaceId, request, this.#now())
    })
  }

  async remove(kind: DocumentKind, id: string, undo = false): Promise<boolean> {
    const { count } = await this.#client.document.updateMany({
      where: { workspaceId: this.#workspaceId, kind, id },
      data: { removed: !undo },
    })
    return count > 0
  }
}
