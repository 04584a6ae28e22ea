import { availableParallelism } from 'node:os'
import type { SharedRows } from '../../../store/types.ts'
import { Threads, threadFile } from '../../../threads.ts'
import { ApiError } from '../../errors.ts'
import { hashOf } from '../rows.ts'
import { readBatch, readShared, type SharedRead, sharedBytes } from './batch.ts'
import { type Sent, SentRows } from './sent.ts'

/** Bodies below this many bytes are read where they arrive: the way to a thread and back would take longer. */
const small = 16_000

/** Rows of requests that are remembered, at about 200 bytes each. */
const mostRemembered = 60_000

/** A body of which all rows are held, without what only a row that is not there would need. */
interface Remembered {
  body: unknown
  rows: SharedRows
}

/** Reads what devices hand in, before anything is done with it. */
export class Readers {
  readonly #threads = new Threads({
    file: threadFile(import.meta.url, './read.worker.js'),
    most: Math.min(4, availableParallelism()),
  })
  readonly #remembered = new Map<string, Remembered>()
  readonly #reading = new Set<Promise<SharedRead>>()
  #rows = 0

  /** The body with its rows as SentRows. Throws an ApiError where it is no JSON. */
  async body(bytes: Buffer): Promise<unknown> {
    const digest = bytes.length < small ? undefined : hashOf(bytes)
    const known = digest === undefined ? undefined : this.#remembered.get(digest)
    const read = known ? await this.#inTurn(known) : await this.#read(bytes)
    if ('failure' in read) throw new ApiError(read.failure)
    const { body, rows } = read
    if (rows === null) return body
    const sent: Sent = {
      whole: async () => {
        const again = readBatch(bytes.toString())
        return ('rows' in again && again.rows) || []
      },
      remember: () => {
        if (digest === undefined || known || !('heads' in rows)) return
        this.#remember(digest, { body, rows: { ...rows, bodies: null } })
      },
    }
    return { ...(body as object), rows: [new SentRows(rows, sent)] }
  }

  async #read(bytes: Buffer): Promise<SharedRead> {
    if (bytes.length < small) return readBatch(bytes.toString())
    const reading = this.#threads.run<SharedRead>(sharedBytes(bytes), { name: 'readBatch' })
    this.#reading.add(reading)
    try {
      return await reading
    } catch {
      // By a thread that could not start or died.
      return readShared(bytes.toString())
    } finally {
      this.#reading.delete(reading)
    }
  }

  /** What is sent again waits for all that came before it and is still being read: nobody's first answer waits for it. */
  async #inTurn(known: Remembered): Promise<Remembered> {
    await Promise.allSettled(this.#reading)
    return known
  }

  #remember(digest: string, batch: Remembered): void {
    if (this.#remembered.has(digest)) return
    this.#remembered.set(digest, batch)
    this.#rows += batch.rows.count
    for (const [oldest, { rows }] of this.#remembered) {
      if (this.#rows <= mostRemembered) return
      this.#remembered.delete(oldest)
      this.#rows -= rows.count
    }
  }

  close(): Promise<void> {
    return this.#threads.close()
  }
}
