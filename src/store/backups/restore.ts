import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { StoreError } from '../errors.ts'
import { backupFolder, backupName, isBackupName, sync } from './files.ts'
import { makeBackup } from './make.ts'
import { type Opens, proveBackup } from './prove.ts'
import type { Backup } from './types.ts'

/** All in one file, which fails while anybody has the database open. False: it is damaged. */
export function closedByAll(file: string): boolean {
  const database = new Database(file, { timeout: 1000 })
  try {
    if (database.pragma('journal_mode = DELETE', { simple: true }) === 'delete') return true
  } catch (error) {
    if (/^SQLITE_(CORRUPT|NOTADB|IOERR_SHORT_READ)/.test((error as { code?: string }).code ?? '')) return false
  } finally {
    database.close()
  }
  throw new StoreError('The database is in use. Stop the server first.')
}

/** What is put away, as a copy that can be restored, or where it is damaged as it lies. */
async function putAway(file: string, at: Date): Promise<string> {
  const whole = closedByAll(file)
  try {
    if (whole) return (await makeBackup(file, { reason: 'restore', at })).name
  } catch {
    // Damaged further in.
  }
  const name = `damaged ${backupName(file, at)}`
  copyFileSync(file, join(backupFolder(file), name))
  return name
}

export interface Restored {
  from: Backup
  /** Name of the copy of what was there before; null where nothing was. */
  before: string | null
}

/**
 * Puts a proven copy in the database's place. What was there is copied first. Throws a StoreError whose message is for
 * whoever asked, and leaves the database as it was.
 */
export async function restoreBackup(
  file: string,
  { path, opens, now }: { path: string; opens: Opens; now: () => Date },
): Promise<Restored> {
  if (!existsSync(path)) throw new StoreError(`There is no copy ${path}.`)
  if (!isBackupName(basename(path)))
    throw new StoreError(
      `${path} is not called as copies are: keep the name that it was made with, and the file beside it that ends with .json.`,
    )
  const from = await proveBackup(path, { opens, now })
  if (from.proof === null || from.proof.faults.length > 0)
    throw new StoreError(`The copy was not restored, since it is not whole: ${from.proof?.faults.join('; ')}.`)
  const before = existsSync(file) ? await putAway(file, now()) : null
  const part = join(dirname(file), `.restore-${process.pid}.db`)
  try {
    copyFileSync(path, part)
    // Otherwise a power cut soon after could leave the name without the contents.
    sync(part)
    for (const suffix of ['-wal', '-shm']) rmSync(`${file}${suffix}`, { force: true })
    renameSync(part, file)
  } finally {
    rmSync(part, { force: true })
  }
  return { from, before }
}
