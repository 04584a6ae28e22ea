import { Threads, threadFile } from '../../threads.ts'
import type { Place } from '../records/add.ts'
import type { Accepted, Batch } from '../records/types.ts'
import type { DirectConnection } from './direct.ts'
import type { Taken, ToTake } from './intake.worker.ts'
import { outcomesIn } from './outcomeLetters.ts'

/** After so long without a commit its log is tidied (ms). */
const quiet = 1000

/** Commits in a thread with a connection of its own, in turn with all else that writes. */
export class IntakeThread {
  readonly #connection: DirectConnection
  readonly #thread = new Threads({ file: threadFile(import.meta.url, './intake.worker.js'), most: 1 })
  #tidy: NodeJS.Timeout | undefined

  constructor(connection: DirectConnection) {
    this.#connection = connection
  }

  /** All in one commit that is synced to disk before this resolves, or none. Throws ThreadDied where it is not known which. */
  async take(together: readonly { place: Place; batch: Batch }[]): Promise<Accepted[]> {
    clearTimeout(this.#tidy)
    const { to } = this.#connection
    const asked: ToTake = { to, together: together.map(({ place, batch }) => ({ place, batch })) }
    const taken = await this.#connection.turn(() => this.#thread.run<Taken>(asked, { name: 'take' }))
    this.#tidy = setTimeout(() => void this.#thread.run(to, { name: 'tidy' }).catch(() => {}), quiet)
    this.#tidy.unref()
    if ('accepted' in taken) return taken.accepted.map((each) => ({ ...each, outcomes: outcomesIn(each.outcomes) }))
    throw Object.assign(new Error(taken.failed.message), { code: taken.failed.code })
  }

  async close(): Promise<void> {
    clearTimeout(this.#tidy)
    if (this.#thread.alive) await this.#thread.run(null, { name: 'close' }).catch(() => {})
    await this.#thread.close()
  }
}
