import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
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

/** Beside this file when run from the sources, beside the server when built. */
function threadFile(): string {
  const name = import.meta.url.endsWith('.ts') ? './fromSources.js' : './files.worker.js'
  return fileURLToPath(new URL(name, import.meta.url))
}

function answerOf<Answer>(told: here.Told<Answer>): Answer {
  if ('failure' in told) throw new ApiError(told.failure)
  return told.answer
}

/** Reads and writes whole events as files, so that phones are answered meanwhile. */
export class Files {
  // One at a time: a file may fill hundreds of megabytes.
  readonly #thread = new Piscina({
    filename: threadFile(),
    execArgv: [],
    minThreads: 0,
    maxThreads: 1,
    idleTimeout: 30_000,
  })

  constructor() {
    // A thread that can not start or dies fails what it was asked; without a listener it would end the server.
    this.#thread.on('error', () => {})
  }

  /** Throws an ApiError where something in it is wrong. @param file its bytes, or what they say */
  async archive(file: unknown): Promise<FileRead> {
    if (!(file instanceof Uint8Array) || file.byteLength < small) return answerOf(await here.archiveIn(file))
    return answerOf(await this.#thread.run(file, { name: 'archiveIn' }))
  }

  /** Throws an ApiError where something in it is wrong. */
  async tables(file: Uint8Array): Promise<FileRead> {
    if (file.byteLength < smallZip) return answerOf(await here.tablesIn(file))
    return answerOf(await this.#thread.run(file, { name: 'tablesIn' }))
  }

  async asTables(asked: TablesAsked): Promise<{ name: string; zip: Uint8Array }> {
    const { records } = asked.contents
    const few = records.length < fewRecords && !records.some(({ row }) => row.kind === 'photo')
    return answerOf(few ? await here.tablesOut(asked) : await this.#thread.run(asked, { name: 'tablesOut' }))
  }

  close(): Promise<void> {
    return this.#thread.destroy()
  }
}
