import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { readConfig } from '../src/config.ts'
import { FileBackups, opensHere, restoreBackup } from '../src/store/backups/index.ts'
import { fileOf, isPostgresql } from '../src/store/open.ts'
import type { Backup } from '../src/store/types.ts'

const now = () => new Date()

const rowsOf = ({ manifest }: Backup) => manifest?.tables.reduce((sum, { rows }) => sum + rows, 0) ?? 0

const told = (copy: Backup) =>
  `${copy.name}: ${(copy.bytes / 1e6).toFixed(1)} MB, ${rowsOf(copy)} rows in ${copy.manifest?.tables.length ?? 0} tables`

/** Says what came of a proof; a copy that is not whole ends the program with a fault. */
function tellProof({ name, proof }: Backup): void {
  if (proof && proof.faults.length === 0) {
    console.log(
      `${name} was opened elsewhere: all ${proof.rows} rows are there, counts and hashes agree (${proof.milliseconds} ms).`,
    )
    return
  }
  console.error(`${name} is not whole: ${proof?.faults.join('; ')}`)
  process.exitCode = 1
}

/** Copies, drills and restoring, for whoever has the machine. */
async function main([what, asked]: readonly (string | undefined)[]) {
  const { databaseUrl } = readConfig(process.env)
  if (isPostgresql(databaseUrl))
    throw new Error('A PostgreSQL database is copied by its own programs: pg_dump and pg_restore, see README.md.')
  const file = fileOf(databaseUrl)
  if (!existsSync(file) && what !== 'restore') throw new Error(`There is no database ${file} yet.`)
  const backups = new FileBackups(file, now)
  const all = await backups.list()
  const nameOf = () => asked ?? all[0]?.name
  if (what === 'make') {
    console.log(`Copied: ${told(await backups.make('command'))}\nin ${backups.folder}`)
  } else if (what === 'list') {
    for (const copy of all) console.log(told(copy))
    if (all.length === 0) console.log('There is no copy yet: npm run backup')
  } else if (what === 'prove') {
    const name = nameOf()
    const copy = name === undefined ? null : await backups.prove(name)
    if (!copy)
      throw new Error(name === undefined ? 'There is no copy yet: npm run backup' : `There is no copy ${name}.`)
    tellProof(copy)
  } else if (what === 'restore') {
    if (asked === undefined)
      throw new Error('Usage: npm run restore -- "name of the copy" (npm run backups lists them)')
    const path = existsSync(asked) ? asked : join(backups.folder, asked)
    const { from, before } = await restoreBackup(file, { path, opens: opensHere, now })
    console.log(`Restored from ${from.name}.${before === null ? '' : ` What was there before is kept as ${before}.`}`)
  } else throw new Error('Usage: npm run backup, backups, drill or restore')
}

try {
  await main(process.argv.slice(2))
} catch (error) {
  const message = error instanceof Error ? error.message : String(error)
  const full = /disk is full|ENOSPC/.test(message)
  console.error(full ? 'The disk is full. Nothing was changed, and no half of a copy is left.' : message)
  process.exitCode = 1
}
