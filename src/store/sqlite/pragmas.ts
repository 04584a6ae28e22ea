import type { SqlQueryable } from '@prisma/driver-adapter-utils'
import { StoreError } from '../errors.ts'

/**
 * What every connection is set to. `synchronous = FULL` makes a commit survive a power cut; in WAL mode the driver's
 * own default does not.
 */
export const settings = [
  { name: 'journal_mode', set: 'WAL', reads: 'wal' },
  { name: 'synchronous', set: 'FULL', reads: '2' },
  { name: 'foreign_keys', set: 'ON', reads: '1' },
  // What is deleted is overwritten, so that the file does not keep what a person wanted to be gone.
  { name: 'secure_delete', set: 'ON', reads: '1' },
  { name: 'busy_timeout', set: '5000', reads: '5000' },
] as const

export type Setting = (typeof settings)[number]['name']

export const settingsScript = settings.map(({ name, set }) => `PRAGMA ${name} = ${set};`).join('\n')

export async function readSetting(connection: Pick<SqlQueryable, 'queryRaw'>, name: Setting): Promise<string> {
  const { rows } = await connection.queryRaw({ sql: `PRAGMA ${name}`, args: [], argTypes: [] })
  return String(rows[0]?.[0])
}

/** Throws a StoreError that names the setting which the file system or the engine did not accept. */
export async function assertSettings(connection: Pick<SqlQueryable, 'queryRaw'>): Promise<void> {
  for (const { name, set, reads } of settings) {
    const found = await readSetting(connection, name)
    if (found === reads) continue
    throw new StoreError(
      `The database does not accept ${name} = ${set} (it says ${found}), so a saved document could be lost. ` +
        'Put the database on a local disk and start again.',
    )
  }
}
