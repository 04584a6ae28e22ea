/** So many wrong passphrases in a row cost nothing; each further one doubles the wait, from a second to five minutes. */
const free = 5
const longest = 300
/** After an hour of quiet (ms) an account begins anew. */
const forgotten = 3_600_000
const most = 10_000

interface Account {
  tried: number
  /** When the next attempt is taken (ms). */
  next: number
  last: number
}

/**
 * Limits attempts by account, not by address: a whole stand shares one address, and who guesses has many. Nicknames that
 * nobody has are limited alike, so that the limit tells nothing.
 */
export class Attempts {
  readonly #accounts = new Map<string, Account>()
  readonly #now: () => number

  constructor(now: () => number = Date.now) {
    this.#now = now
  }

  /** Counts an attempt as a wrong one until `succeeded` is called, and answers 0; or how many seconds are still to be waited. */
  begin(account: string): number {
    const now = this.#now()
    const known = this.#accounts.get(account)
    const { tried, next } = known && now - known.last < forgotten ? known : { tried: 0, next: 0 }
    if (now < next) return Math.ceil((next - now) / 1000)
    const wait = tried + 1 < free ? 0 : Math.min(2 ** (tried + 1 - free), longest)
    // Put in anew, so that the first is always the one that was tried longest ago.
    this.#accounts.delete(account)
    this.#accounts.set(account, { tried: tried + 1, next: now + wait * 1000, last: now })
    if (this.#accounts.size > most) this.#accounts.delete(this.#accounts.keys().next().value as string)
    return 0
  }

  succeeded(account: string): void {
    this.#accounts.delete(account)
  }
}
