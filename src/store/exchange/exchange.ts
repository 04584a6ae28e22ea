import { isFull, StorageFull } from '../errors.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { StoreHealth } from '../types.ts'
import { bringEvent } from './bring.ts'
import { readContents } from './contents.ts'
import type { BroughtFile, ExchangeStore } from './types.ts'

/** An event with thousands of records and photos takes longer than what people save by hand (ms). */
const options = { timeout: 180_000 }

/** Whole events of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseExchange implements ExchangeStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date
  readonly #engine: StoreHealth['engine']

  constructor(
    client: PrismaClient,
    workspaceId: string,
    { now, engine }: { now: () => Date; engine: StoreHealth['engine'] },
  ) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
    this.#engine = engine
  }

  contents(event: string) {
    const scope = { workspaceId: this.#workspaceId, event }
    return this.#client.$transaction((transaction) => readContents(transaction, scope), options)
  }

  named() {
    const where = { workspaceId: this.#workspaceId }
    return this.#client.namedPerson.findMany({ where, select: { id: true, nickname: true } })
  }

  async bring(file: BroughtFile, as: Parameters<ExchangeStore['bring']>[1]) {
    try {
      return await this.#client.$transaction(
        (transaction) =>
          bringEvent(transaction, this.#workspaceId, file, { ...as, now: this.#now(), engine: this.#engine }),
        options,
      )
    } catch (error) {
      throw isFull(error) ? new StorageFull(error) : error
    }
  }
}
