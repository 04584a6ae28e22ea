import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { withoutBody } from '../../../model/scouting/cells.ts'
import type { Cells } from '../../../store/types.ts'
import { ApiError } from '../../errors.ts'
import { hashOf } from '../rows.ts'
import { type BatchRead, readBatch } from './batch.ts'
import { type Sent, SentRow } from './sent.ts'

/** Texts below this many characters are read where they arrive: the way to a thread and back would take longer. */
const small = 16_000

/** Rows of requests that are remembered, at about 300 bytes each. */
const mostRemembered = 60_000

/** Beside this file when run from the sources, beside the server when built. */
function threadFile(): string {
  const name = import.meta.url.endsWith('.ts') ? './fromSources.js' : './read.worker.js'
  return fileURLToPath(new URL(name, import.meta.url))
}

/** Reads what devices hand in, before anything is done with it. */
export class Readers {
  readonly #threads = new Piscina({
    filename: threadFile(),
    name: 'readBatch',
    execArgv: [],
    minThreads: 0,
    maxThreads: Math.min(2, availableParallelism()),
    idleTimeout: 30_000,
  })
  readonly #remembered = new Map<string, { body: unknown; rows: Cells[] }>()
  #rows = 0

  constructor() {
    // A thread that can not start or dies fails what it was asked, which is read here instead.
    this.#threads.on('error', () => {})
  }

  /** The body with its rows as SentRow. Throws an ApiError where it is no JSON. */
  async body(text: string): Promise<unknown> {
    const digest = text.length < small ? undefined : hashOf(text)
    const known = digest === undefined ? undefined : this.#remembered.get(digest)
    const read = known ?? (await this.#read(text))
    if ('failure' in read) throw new ApiError(read.failure)
    const { body, rows } = read
    if (rows === null) return body
    const sent: Sent = {
      whole: async () => {
        const again = await this.#read(text)
        return ('rows' in again && again.rows) || []
      },
      remember: (kept) => {
        if (digest !== undefined && !known) this.#remember(digest, { body, rows: kept.map(withoutBody) })
      },
    }
    return { ...(body as object), rows: rows.map((row) => new SentRow(row, sent)) }
  }

  async #read(text: string): Promise<BatchRead> {
    if (text.length < small) return readBatch(text)
    try {
      return (await this.#threads.run(text)) as BatchRead
    } catch {
      return readBatch(text)
    }
  }

  #remember(digest: string, batch: { body: unknown; rows: Cells[] }): void {
    if (this.#remembered.has(digest)) return
    this.#remembered.set(digest, batch)
    this.#rows += batch.rows.length
    for (const [oldest, { rows }] of this.#remembered) {
      if (this.#rows <= mostRemembered) return
      this.#remembered.delete(oldest)
      this.#rows -= rows.length
    }
  }

  close(): Promise<void> {
    return this.#threads.destroy()
  }
}
