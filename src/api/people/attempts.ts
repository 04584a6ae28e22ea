import { createHash, randomUUID } from 'node:crypto'
import type { Signals } from '../../store/types.ts'

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

/** What processes tell each other of attempts: accounts by their hash, so that no nickname is in a message. */
const topic = 'attempts'

interface Told {
  from: string
  account: string
  what: 'tried' | 'succeeded'
}

const hashed = (account: string): string => createHash('sha256').update(account).digest('base64url')

/**
 * Limits attempts by account, not by address: a whole stand shares one address, and who guesses has many. Nicknames that
 * nobody has are limited alike, so that the limit tells nothing. Processes that share a database tell each other of every attempt, so
 * that several of them give no more: but for those within the moment in which a message is on its way.
 */
export class Attempts {
  readonly #accounts = new Map<string, Account>()
  readonly #now: () => number
  readonly #signals: Pick<Signals, 'send' | 'hear'> | null
  readonly #name = randomUUID()

  constructor(now: () => number = Date.now, signals: Pick<Signals, 'send' | 'hear'> | null = null) {
    this.#now = now
    this.#signals = signals
    signals?.hear(topic, (message) => {
      const { from, account, what } = JSON.parse(message) as Told
      if (from === this.#name) return
      if (what === 'tried') this.#count(account)
      else this.#accounts.delete(account)
    })
  }

  /** Counts an attempt as a wrong one until `succeeded` is called, and answers 0; or how many seconds are still to be waited. */
  begin(named: string): number {
    const account = hashed(named)
    const now = this.#now()
    const { next } = this.#of(account, now)
    if (now < next) return Math.ceil((next - now) / 1000)
    this.#count(account)
    this.#tell(account, 'tried')
    return 0
  }

  succeeded(named: string): void {
    const account = hashed(named)
    this.#accounts.delete(account)
    this.#tell(account, 'succeeded')
  }

  #of(account: string, now: number): Pick<Account, 'tried' | 'next'> {
    const known = this.#accounts.get(account)
    return known && now - known.last < forgotten ? known : { tried: 0, next: 0 }
  }

  #count(account: string): void {
    const now = this.#now()
    const { tried } = this.#of(account, now)
    const wait = tried + 1 < free ? 0 : Math.min(2 ** (tried + 1 - free), longest)
    // Put in anew, so that the first is always the one that was tried longest ago.
    this.#accounts.delete(account)
    this.#accounts.set(account, { tried: tried + 1, next: now + wait * 1000, last: now })
    if (this.#accounts.size > most) this.#accounts.delete(this.#accounts.keys().next().value as string)
  }

  #tell(account: string, what: Told['what']): void {
    // One that gets lost costs a guess more.
    this.#signals?.send(topic, JSON.stringify({ from: this.#name, account, what } satisfies Told)).catch(() => {})
  }
}
