/**
 * Requests of one signed-in device in a minute. A page of an event asks some ten at once and then now and then; a phone in the stands
 * that hands in its whole outbox one by one stays far below.
 */
export const mostRequests = 6000

const minute = 60_000

/** Counts requests by device, not by address: a whole stand shares one. */
export class Pace {
  readonly #most: number
  readonly #now: () => number
  readonly #counts = new Map<string, number>()
  #since: number

  constructor(most = mostRequests, now: () => number = Date.now) {
    this.#most = most
    this.#now = now
    this.#since = now()
  }

  /** Counts a request and answers 0; or how many seconds are still to be waited. */
  count(device: string): number {
    const now = this.#now()
    // A clock that was set back begins anew, too.
    if (now - this.#since >= minute || now < this.#since) {
      this.#since = now
      this.#counts.clear()
    }
    const count = (this.#counts.get(device) ?? 0) + 1
    this.#counts.set(device, count)
    return count <= this.#most ? 0 : Math.max(1, Math.ceil((this.#since + minute - now) / 1000))
  }
}
