import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { backupAt, proofOf, writeWhole } from './files.ts'
import { differences, tableSums } from './sums.ts'
import type { Backup, Proof } from './types.ts'

/** Opens a copied database as a start of the program would; throws where it could not. */
export type Opens = (file: string) => Promise<void>

/** What is wrong with a copy: damage that the engine finds, or other rows than its manifest says. */
function examine(file: string, { manifest }: Backup): { faults: string[]; rows: number } {
  const database = new Database(file, { fileMustExist: true, readonly: true })
  try {
    const damage = (database.pragma('integrity_check(5)', { simple: false }) as { integrity_check: string }[])
      .map((row) => row.integrity_check)
      .filter((said) => said !== 'ok')
    const astray = database.pragma('foreign_key_check') as { table: string }[]
    const tables = tableSums(database)
    return {
      faults: [
        ...damage,
        ...[...new Set(astray.map(({ table }) => table))].map((table) => `${table} names rows that are not there`),
        ...(manifest ? differences(manifest.tables, tables) : ['its list of counts and hashes is missing']),
      ],
      rows: tables.reduce((sum, { rows }) => sum + rows, 0),
    }
  } finally {
    database.close()
  }
}

const said = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** Tries a copy elsewhere, so that neither it nor the database in use is touched, and writes down what came of it. */
export async function proveBackup(path: string, { opens, now }: { opens: Opens; now: () => Date }): Promise<Backup> {
  const began = performance.now()
  const folder = mkdtempSync(join(tmpdir(), 'cyclewright-drill-'))
  const elsewhere = join(folder, 'drill.db')
  const proof: Proof = { provenAt: now().toISOString(), faults: [], rows: 0, milliseconds: 0 }
  try {
    copyFileSync(path, elsewhere)
    Object.assign(proof, examine(elsewhere, backupAt(path)))
    if (proof.faults.length === 0) await opens(elsewhere)
  } catch (error) {
    proof.faults = [...proof.faults, said(error)]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  proof.milliseconds = Math.round(performance.now() - began)
  if (existsSync(path)) writeWhole(proofOf(path), JSON.stringify(proof))
  return backupAt(path)
}
