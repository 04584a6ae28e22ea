import type { Match, Receipt } from '../../model/scouting/types.ts'
import { isFull, StorageFull } from '../errors.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { receiptOf } from './add.ts'
import type { Intake } from './intake.ts'
import {
  beginDrill,
  countApart,
  finishDrill,
  readApart,
  readChain,
  readChoices,
  readDrills,
  replaceRecords,
  resolveApart,
} from './lead.ts'
import type { RecordLogs } from './log.ts'
import { recordColumns, recordOf } from './rows.ts'
import type { Accepted, Batch, Choice, EventLog, RecordStore, StoredRecord, Successor, Wanted } from './types.ts'

/** The records of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseRecords implements RecordStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date
  readonly #logs: RecordLogs

  readonly #intake: Intake

  constructor(
    client: PrismaClient,
    workspaceId: string,
    { now, intake, logs }: { now: () => Date; intake: Intake; logs: RecordLogs },
  ) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
    this.#intake = intake
    this.#logs = logs
  }

  async accept(batch: Batch): Promise<Accepted> {
    try {
      return await this.#intake.accept(this.#place(), batch)
    } catch (error) {
      throw isFull(error) ? new StorageFull(error) : error
    }
  }

  async list(event: string, { after = 0, limit, kinds }: Wanted = {}): Promise<StoredRecord[]> {
    const rows = await this.#client.fieldRecord.findMany({
      where: {
        workspaceId: this.#workspaceId,
        event,
        arrival: { gt: after },
        ...(kinds && { kind: { in: [...kinds] } }),
      },
      orderBy: { arrival: 'asc' },
      select: recordColumns,
      ...(limit === undefined ? {} : { take: limit }),
    })
    return rows.map(recordOf)
  }

  log(event: string): Promise<EventLog> {
    return this.#logs.of(this.#client, this.#workspaceId, event)
  }

  logKept(event: string): EventLog | null {
    return this.#logs.kept(this.#workspaceId, event)
  }

  since(event: string, arrival: number): Promise<number> {
    return this.#client.fieldRecord.count({
      where: { workspaceId: this.#workspaceId, event, arrival: { gt: arrival } },
    })
  }

  async get(ids: readonly string[]): Promise<StoredRecord[]> {
    const where = { workspaceId: this.#workspaceId, id: { in: [...ids] } }
    return (await this.#client.fieldRecord.findMany({ where, select: recordColumns })).map(recordOf)
  }

  chain(id: string): Promise<StoredRecord[]> {
    return readChain(this.#client, this.#workspaceId, id)
  }

  receipt(device: string): Promise<Receipt> {
    return receiptOf(this.#client, this.#place(), device)
  }

  async schedule(event: string): Promise<Map<string, Match>> {
    const where = { workspaceId: this.#workspaceId, event, removed: false }
    const rows = await this.#client.scheduledMatch.findMany({ where, select: { id: true, body: true } })
    return new Map(rows.map(({ id, body }) => [id, JSON.parse(body) as Match]))
  }

  replace(successors: readonly Successor[], person: string | null) {
    return this.#written((transaction) => replaceRecords(transaction, this.#place(), { successors, person }))
  }

  apart(event: string) {
    return readApart(this.#client, this.#workspaceId, event)
  }

  waiting(event: string) {
    return countApart(this.#client, this.#workspaceId, event)
  }

  resolve(arrival: number, as: Parameters<RecordStore['resolve']>[1]) {
    return this.#written((transaction) => resolveApart(transaction, this.#place(), { arrival, ...as }))
  }

  choices(event: string) {
    return readChoices(this.#client, this.#workspaceId, event)
  }

  async choose(event: string, choice: Omit<Choice, 'chosenAt'>): Promise<void> {
    const data = { ...choice, workspaceId: this.#workspaceId, event, chosenAt: this.#now() }
    await this.#client.recordChoice.create({ data })
  }

  drills(event: string) {
    return readDrills(this.#client, this.#workspaceId, event)
  }

  startDrill(event: string, person: string | null) {
    return this.#written((transaction) => beginDrill(transaction, this.#place(), { event, person }))
  }

  endDrill(event: string, id: string) {
    return this.#written((transaction) => finishDrill(transaction, this.#place(), { event, id }))
  }

  #place() {
    return { workspaceId: this.#workspaceId, at: this.#now() }
  }

  /** In one commit, or not at all. */
  async #written<Result>(work: (transaction: TransactionClient) => Promise<Result>): Promise<Result> {
    try {
      return await this.#client.$transaction(work)
    } catch (error) {
      throw isFull(error) ? new StorageFull(error) : error
    }
  }
}
