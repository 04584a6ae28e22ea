import { ThreadDied, Threads, threadFile } from '../../threads.ts'
import { ApiError } from '../errors.ts'
import * as here from './files.worker.ts'
import type { FileRead } from './reading.ts'
import type { TablesAsked } from './tables.ts'

/** Files below so many bytes are read where they arrive: the way to a thread and back would take longer. */
const small = 100_000

/** The same of zip files, which unpack into twenty times as much. */
const smallZip = 8_000

/** Events of fewer records, without photos, are written where they are asked for. */
const fewRecords = 50

const diedTwice =
  'The thread that worked at this file ended over it, and so did the one that took its place: the file may be too large for this server. Nothing was changed'

function answerOf<Answer>(told: here.Told<Answer>): Answer {
  if ('failure' in told) throw new ApiError(told.failure)
  return told.answer
}

/** Reads and writes whole events as files, so that phones are answered meanwhile. */
export class Files {
  // One at a time: a file may fill hundreds of megabytes.
  readonly #thread = new Threads({ file: threadFile(import.meta.url, './files.worker.js'), most: 1 })

  /** Throws an ApiError where something in it is wrong. @param file its bytes, or what they say */
  async archive(file: unknown): Promise<FileRead> {
    if (!(file instanceof Uint8Array) || file.byteLength < small) return answerOf(await here.archiveIn(file))
    return answerOf(await this.#twice<FileRead>('archiveIn', file))
  }

  /** Throws an ApiError where something in it is wrong. */
  async tables(file: Uint8Array): Promise<FileRead> {
    if (file.byteLength < smallZip) return answerOf(await here.tablesIn(file))
    return answerOf(await this.#twice<FileRead>('tablesIn', file))
  }

  async asTables(asked: TablesAsked): Promise<{ name: string; zip: Uint8Array }> {
    const { records } = asked.contents
    const few = records.length < fewRecords && !records.some(({ row }) => row.kind === 'photo')
    return answerOf(
      few ? await here.tablesOut(asked) : await this.#twice<{ name: string; zip: Uint8Array }>('tablesOut', asked),
    )
  }

  /** Nothing is changed by reading or writing a file, so a thread that dies over it is followed by another one, once. */
  async #twice<Answer>(name: string, asked: unknown): Promise<here.Told<Answer>> {
    for (let again = false; ; again = true) {
      try {
        return await this.#thread.run(asked, { name })
      } catch (error) {
        if (!(error instanceof ThreadDied)) throw error
        if (again) throw new ApiError({ code: 'internal', message: diedTwice })
      }
    }
  }

  close(): Promise<void> {
    return this.#thread.close()
  }
}
