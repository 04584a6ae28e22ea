import { isFull, StorageFull } from '../errors.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { StoreHealth } from '../types.ts'
import { bringEvent } from './bring.ts'
import { readContents } from './contents.ts'
import { forgotten } from './people.ts'
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

  async named() {
    const where = { workspaceId: this.#workspaceId }
    const rows = await this.#client.namedPerson.findMany({ where, orderBy: [{ nickname: 'asc' }, { id: 'asc' }] })
    return rows.map(({ id, nickname }) => ({ id, nickname: nickname === forgotten ? null : nickname }))
  }

  async forgetName(id: string) {
    const where = { workspaceId: this.#workspaceId, id }
    return (await this.#client.namedPerson.updateMany({ where, data: { nickname: forgotten } })).count > 0
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
