import type { Place } from './add.ts'
import { sizeOf } from './batch.ts'
import type { Accepted, Batch } from './types.ts'

/** Batches of any workspaces, in one commit that is synced to disk before this resolves: what became of each, or nothing of any. */
export type TakeIn = (together: readonly { place: Place; batch: Batch }[]) => Promise<Accepted[]>

interface Waiting {
  place: Place
  batch: Batch
  done(accepted: Accepted): void
  failed(error: unknown): void
}

/** Rows of one commit, about: a fifth of a second of work, which is how long others wait for their turn. */
const mostTogether = 5000

/**
 * Takes batches in. What came in while the server was busy is committed together, because syncing to the disk costs as much for
 * one batch as for thirty. A batch is in whole or not at all, and nobody is answered before the commit.
 */
export class Intake {
  readonly #takeIn: TakeIn
  #waiting: Waiting[] = []
  #going = false

  constructor(takeIn: TakeIn) {
    this.#takeIn = takeIn
  }

  accept(place: Place, batch: Batch): Promise<Accepted> {
    return new Promise((done, failed) => {
      this.#waiting.push({ place, batch, done, failed })
      if (this.#going) return
      this.#going = true
      // After all that has been received already was read.
      setImmediate(() => void this.#goOn())
    })
  }

  async #goOn(): Promise<void> {
    while (this.#waiting.length > 0) await this.#take(this.#next())
    this.#going = false
  }

  /** The oldest, and as many more as fit into one commit. */
  #next(): Waiting[] {
    let rows = 0
    const end = this.#waiting.findIndex(({ batch }, index) => {
      rows += sizeOf(batch)
      return index > 0 && rows > mostTogether
    })
    return this.#waiting.splice(0, end < 0 ? this.#waiting.length : end)
  }

  async #take(together: readonly Waiting[]): Promise<void> {
    let accepted: Accepted[]
    try {
      accepted = await this.#takeIn(together)
    } catch (error) {
      // What is wrong with one is not to fall on the others.
      if (together.length > 1) for (const each of together) await this.#take([each])
      else together[0]!.failed(error)
      return
    }
    together.forEach(({ done }, index) => {
      done(accepted[index]!)
    })
  }
}
