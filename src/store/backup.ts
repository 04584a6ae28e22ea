import { mkdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import Database from 'better-sqlite3'

/** Copies the database, consistent even while it is in use, beside it into `backups/`. Returns the copy's path. */
export function backup(file: string, at: Date): string {
  const folder = join(dirname(file), 'backups')
  mkdirSync(folder, { recursive: true })
  const stamp = at.toISOString().replaceAll(':', '.')
  const copy = join(folder, `${basename(file, '.db')} ${stamp}.db`)
  const database = new Database(file, { fileMustExist: true })
  try {
    database.prepare('VACUUM INTO ?').run(copy)
  } finally {
    database.close()
  }
  return copy
}
