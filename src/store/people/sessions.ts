import type { Database } from '../database.ts'
import type { Session } from './types.ts'

interface Known {
  session: Session
  seenAt: number
}

/** More than that many are begun anew. */
const most = 5000

/** Where other processes change people too: how long one is believed without asking, should their word of it get lost (ms). */
const longestBelief = 5_000

const topic = 'sessions'

/**
 * Sessions that were looked up, so that a stand full of phones costs no query each. A change of people and devices makes every process
 * forget them all: it acts on the next request, in another process as soon as its word is there.
 */
export class Sessions {
  readonly #known = new Map<string, Known>()
  readonly #of: Pick<Database, 'shared' | 'signals'>
  #generation = 0
  #since = 0

  constructor(of: Pick<Database, 'shared' | 'signals'>) {
    this.#of = of
    of.signals.hear(topic, () => this.#forget())
    of.signals.missed(() => this.#forget())
  }

  get(hash: string): Known | undefined {
    if (this.#of.shared && performance.now() - this.#since > longestBelief) this.#forget()
    return this.#known.get(hash)
  }

  /** Keeps what a lookup found, unless something was changed meanwhile. */
  async look(hash: string, find: () => Promise<Known | null>): Promise<Known | null> {
    const before = this.#generation
    const found = await find()
    if (found && before === this.#generation) {
      if (this.#known.size >= most) this.#known.clear()
      this.#known.set(hash, found)
    }
    return found
  }

  #forget(): void {
    this.#generation++
    this.#known.clear()
    this.#since = performance.now()
  }

  /** Forgets before and after a change: nobody who asks meanwhile is kept with what was. */
  async during<Result>(change: () => Promise<Result>): Promise<Result> {
    this.#forget()
    try {
      return await change()
    } finally {
      // Processes that it does not reach believe what they know for a moment longer; the change itself stands.
      await this.#of.signals.send(topic, '').catch(() => {})
    }
  }
}
