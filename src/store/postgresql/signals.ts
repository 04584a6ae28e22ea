import { randomUUID } from 'node:crypto'
import { EventEmitter } from 'node:events'
import type { Client, Pool } from 'pg'
import { OwnSignals, type Signals } from '../signals.ts'
import { lastingClient } from './connection.ts'

const channel = 'cyclewright'

/** How long after a break, or a vain attempt, the next one is made (ms). */
const [firstPause, longestPause] = [100, 5_000]

interface Told {
  from: string
  topic: string
  message: string
}

/**
 * Signals by LISTEN and NOTIFY. One connection listens; when it breaks another is made, and everybody is told that something may
 * have been missed. A message is at most 8000 bytes, which is what PostgreSQL takes.
 */
export class SharedSignals implements Signals {
  readonly shared = true
  readonly #url: string
  readonly #pool: Pool
  readonly #own = new OwnSignals()
  readonly #missed = new EventEmitter().setMaxListeners(0)
  /** Tells one's own messages, which come back, from those of others. */
  readonly #name = randomUUID()
  #client: Client | undefined
  #again: NodeJS.Timeout | undefined
  #closed = false

  private constructor(url: string, pool: Pool) {
    this.#url = url
    this.#pool = pool
  }

  static async open(url: string, pool: Pool): Promise<SharedSignals> {
    const signals = new SharedSignals(url, pool)
    await signals.#listen()
    return signals
  }

  async send(topic: string, message: string): Promise<void> {
    await this.#own.send(topic, message)
    const told: Told = { from: this.#name, topic, message }
    if (!this.#closed) await this.#pool.query('SELECT pg_notify($1, $2)', [channel, JSON.stringify(told)])
  }

  hear(topic: string, heard: (message: string) => void): () => void {
    return this.#own.hear(topic, heard)
  }

  missed(told: () => void): () => void {
    this.#missed.on('missed', told)
    return () => this.#missed.off('missed', told)
  }

  async close(): Promise<void> {
    this.#closed = true
    clearTimeout(this.#again)
    await this.#client?.end().catch(() => {})
  }

  /** Fails whole: a connection that does not listen is ended, so that nobody waits for its end besides who tries again. */
  async #listen(): Promise<void> {
    const client = lastingClient(this.#url)
    client.on('notification', ({ payload }) => this.#heard(payload))
    client.on('error', () => {})
    try {
      await client.connect()
      await client.query(`LISTEN ${channel}`)
    } catch (error) {
      await client.end().catch(() => {})
      throw error
    }
    if (this.#closed) return client.end()
    this.#client = client
    client.once('end', () => this.#listenAgain(firstPause))
  }

  /** Whatever is told from the break until somebody listens again is missed. */
  #listenAgain(pause: number): void {
    if (this.#closed) return
    this.#missed.emit('missed')
    this.#again = setTimeout(async () => {
      try {
        await this.#listen()
        this.#missed.emit('missed')
      } catch {
        this.#listenAgain(Math.min(2 * pause, longestPause))
      }
    }, pause)
  }

  #heard(payload: string | undefined): void {
    const { from, topic, message } = JSON.parse(payload ?? '{}') as Partial<Told>
    if (from === this.#name || topic === undefined || message === undefined) return
    void this.#own.send(topic, message)
  }
}
