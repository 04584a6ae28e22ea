import { availableParallelism } from 'node:os'
import { unpackCells, withoutBody } from '../../../model/scouting/cells.ts'
import type { Cells, SharedBytes } from '../../../store/types.ts'
import { Threads, threadFile } from '../../../threads.ts'
import { ApiError } from '../../errors.ts'
import { hashOf } from '../rows.ts'
import { type BatchRead, readBatch, shared } from './batch.ts'
import { type Sent, SentRow } from './sent.ts'

/** Bodies below this many bytes are read where they arrive: the way to a thread and back would take longer. */
const small = 16_000

/** Rows of requests that are remembered, at about 300 bytes each. */
const mostRemembered = 60_000

/** A body of which all rows are held, without what only a row that is not there would need. */
interface Remembered {
  body: unknown
  rows: Cells[]
  packed: SharedBytes
}

/** Reads what devices hand in, before anything is done with it. */
export class Readers {
  readonly #threads = new Threads({
    file: threadFile(import.meta.url, './read.worker.js'),
    most: Math.min(4, availableParallelism()),
  })
  readonly #remembered = new Map<string, Remembered>()
  readonly #reading = new Set<Promise<BatchRead>>()
  #rows = 0

  /** The body with its rows as SentRow. Throws an ApiError where it is no JSON. */
  async body(bytes: Buffer): Promise<unknown> {
    const digest = bytes.length < small ? undefined : hashOf(bytes)
    const known = digest === undefined ? undefined : this.#remembered.get(digest)
    const read: BatchRead = known ? await this.#inTurn(known) : await this.#read(bytes)
    if ('failure' in read) throw new ApiError(read.failure)
    const { body, rows, packed } = read
    if (rows === null) return body
    const sent: Sent = {
      packed,
      whole: async () => {
        if (packed && !known) return unpackCells(Buffer.from(packed.buffer).toString())
        const again = readBatch(bytes.toString())
        return ('rows' in again && again.rows) || []
      },
      remember: (kept) => {
        if (digest === undefined || known) return
        const rows = kept.map(withoutBody)
        this.#remember(digest, { body, rows, packed: shared(rows) })
      },
    }
    return { ...(body as object), rows: rows.map((row) => new SentRow(row, sent)) }
  }

  async #read(bytes: Buffer): Promise<BatchRead> {
    if (bytes.length < small) return readBatch(bytes.toString())
    const reading = this.#threads.run<BatchRead>(bytes, { name: 'readBatch' })
    this.#reading.add(reading)
    try {
      return await reading
    } catch {
      // By a thread that could not start or died.
      return readBatch(bytes.toString())
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
    this.#rows += batch.rows.length
    for (const [oldest, { rows }] of this.#remembered) {
      if (this.#rows <= mostRemembered) return
      this.#remembered.delete(oldest)
      this.#rows -= rows.length
    }
  }

  close(): Promise<void> {
    return this.#threads.close()
  }
}
