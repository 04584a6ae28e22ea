import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import type { SqlDriverAdapter, SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils'
import { Lock } from '../lock.ts'
import { ExclusiveConnection } from './connection.ts'
import { DirectConnection } from './direct.ts'
import { assertSettings, settingsScript } from './pragmas.ts'

/** Opens connections to one database file, each with the settings that keep what was acknowledged. */
export class SqliteFactory implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = 'sqlite'
  readonly adapterName: string
  readonly #driver: PrismaBetterSqlite3
  readonly #open = new Set<SqlDriverAdapter>()
  readonly #lock = new Lock()
  readonly #writing = new Lock()
  readonly #further: string
  /** For what the client would be too slow for. */
  readonly direct: DirectConnection

  /** @param further SQL that each connection begins with besides */
  constructor(file: string, further = '') {
    this.#further = further
    this.#driver = new PrismaBetterSqlite3({ url: file })
    this.adapterName = this.#driver.adapterName
    this.direct = new DirectConnection({ file, further }, this.#writing)
  }

  async connect(): Promise<SqlDriverAdapter> {
    const connection = new ExclusiveConnection(await this.#driver.connect(), {
      own: this.#lock,
      writing: this.#writing,
    })
    this.#open.add(connection)
    await connection.executeScript(settingsScript + this.#further)
    await assertSettings(connection)
    return connection
  }

  async connectToShadowDb(): Promise<SqlDriverAdapter> {
    const connection = await this.#driver.connectToShadowDb()
    this.#open.add(connection)
    return connection
  }

  /** Ends every connection that was opened here, also those that their users forgot. */
  async disposeAll(): Promise<void> {
    this.direct.close()
    for (const connection of this.#open) await connection.dispose()
    this.#open.clear()
  }
}
