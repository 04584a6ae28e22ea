import type { Session } from './types.ts'

interface Known {
  session: Session
  seenAt: number
}

/** More than that many are begun anew. */
const most = 5000

/**
 * Sessions that were looked up, so that a stand full of phones costs no query each. Every change of people and devices goes
 * through this process and forgets them all: it acts on the next request.
 */
export class Sessions {
  readonly #known = new Map<string, Known>()
  #generation = 0

  get(hash: string): Known | undefined {
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

  forget(): void {
    this.#generation++
    this.#known.clear()
  }

  /** Forgets before and after a change: nobody who asks meanwhile is kept with what was. */
  async during<Result>(change: () => Promise<Result>): Promise<Result> {
    this.forget()
    try {
      return await change()
    } finally {
      this.forget()
    }
  }
}
