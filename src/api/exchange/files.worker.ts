import type { Failure } from '../errors.ts'
import { ApiError } from '../errors.ts'
import { type FileRead, readArchive } from './reading.ts'
import { readTablesFile, type TablesAsked, tableFiles } from './tables.ts'

// Whole events as files are read and written here, by a thread of its own: an event with photos is seconds of work.

export type Told<Answer> = { answer: Answer } | { failure: Failure }

async function told<Answer>(work: () => Answer | Promise<Answer>): Promise<Told<Answer>> {
  try {
    return { answer: await work() }
  } catch (error) {
    if (error instanceof ApiError) return { failure: error.failure }
    throw error
  }
}

export const archiveIn = (file: unknown): Promise<Told<FileRead>> => told(() => readArchive(file))
export const tablesIn = (file: Uint8Array): Promise<Told<FileRead>> => told(() => readTablesFile(file))
export const tablesOut = (asked: TablesAsked) => told(() => tableFiles(asked))
