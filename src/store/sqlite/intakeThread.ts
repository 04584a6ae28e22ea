import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import type { Place } from '../records/add.ts'
import type { Accepted, Batch } from '../records/types.ts'
import type { DirectConnection } from './direct.ts'
import type { Taken, ToTake } from './intake.worker.ts'

/** Beside this file when run from the sources, beside the server when built. */
function threadFile(): string {
  const name = import.meta.url.endsWith('.ts') ? './fromSources.js' : './intake.worker.js'
  return fileURLToPath(new URL(name, import.meta.url))
}

/** After so long without a commit its log is tidied (ms). */
const quiet = 1000

/** Commits in a thread with a connection of its own, in turn with all else that writes. */
export class IntakeThread {
  readonly #connection: DirectConnection
  readonly #thread = new Piscina({
    filename: threadFile(),
    execArgv: [],
    minThreads: 0,
    maxThreads: 1,
    idleTimeout: 30_000,
  })
  #tidy: NodeJS.Timeout | undefined

  constructor(connection: DirectConnection) {
    this.#connection = connection
    // A thread that can not start or dies fails what it was asked; without a listener it would end the server.
    this.#thread.on('error', () => {})
  }

  /** All in one commit that is synced to disk before this resolves, or none. */
  async take(together: readonly { place: Place; batch: Batch }[]): Promise<Accepted[]> {
    clearTimeout(this.#tidy)
    const { to } = this.#connection
    const asked: ToTake = {
      to,
      together: together.map(({ place, batch }) => ({ place, batch: batch.packed ? { ...batch, rows: [] } : batch })),
    }
    const taken: Taken = await this.#connection.turn(() => this.#thread.run(asked, { name: 'take' }))
    this.#tidy = setTimeout(() => void this.#thread.run(to, { name: 'tidy' }).catch(() => {}), quiet)
    this.#tidy.unref()
    if ('accepted' in taken) return taken.accepted
    throw Object.assign(new Error(taken.failed.message), { code: taken.failed.code })
  }

  async close(): Promise<void> {
    clearTimeout(this.#tidy)
    if (this.#thread.threads.length > 0) await this.#thread.run(null, { name: 'close' }).catch(() => {})
    await this.#thread.destroy()
  }
}
