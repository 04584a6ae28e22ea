import { chmodSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { backupAt, backupFolder, backupName, clearAway, manifestOf, sync, writeWhole } from './files.ts'
import { tableSums } from './sums.ts'
import type { Backup, BackupReason, Manifest } from './types.ts'

/** One file that needs none beside it, on the disk for good, for this user alone. Returns its bytes. */
function settled(path: string): number {
  const copy = new Database(path)
  try {
    copy.pragma('journal_mode = DELETE')
  } finally {
    copy.close()
  }
  chmodSync(path, 0o600)
  sync(path)
  return statSync(path).size
}

/**
 * Copies a database that may be in use, beside it into `backups/`. Copy and manifest are of one state: both read within one
 * transaction, which holds up nobody who writes.
 */
export async function makeBackup(file: string, { reason, at }: { reason: BackupReason; at: Date }): Promise<Backup> {
  clearAway(file)
  const path = join(backupFolder(file), backupName(file, at))
  const part = `${path}.part`
  const database = new Database(file, { fileMustExist: true, readonly: true })
  try {
    database.pragma('busy_timeout = 5000')
    database.exec('BEGIN')
    // The transaction begins with the first reading.
    database.prepare('SELECT count(*) FROM sqlite_schema').get()
    await database.backup(part)
    const tables = tableSums(database)
    database.exec('COMMIT')
    const bytes = settled(part)
    const manifest: Manifest = { version: 1, reason, madeAt: at.toISOString(), bytes, tables }
    writeWhole(manifestOf(path), JSON.stringify(manifest))
    renameSync(part, path)
  } catch (error) {
    rmSync(part, { force: true })
    throw error
  } finally {
    database.close()
  }
  return backupAt(path)
}
