import {
  closeSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { Backup, Manifest, Proof } from './types.ts'

/** Beside the database, for this user alone: passphrases' hashes are in it too. */
export function backupFolder(file: string): string {
  const folder = join(dirname(file), 'backups')
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  return folder
}

export const backupName = (file: string, at: Date): string =>
  `${basename(file, '.db')} ${at.toISOString().replaceAll(':', '.')}.db`

/** A file of our making, and nothing that leads out of the folder. */
export const isBackupName = (name: string): boolean =>
  /^[^/\\]+ \d{4}-\d\d-\d\dT\d\d\.\d\d\.\d\d\.\d{3}Z\.db$/.test(name)

const madeAtOf = (name: string): string => {
  const [, day, hour, minute, rest] = /(\d{4}-\d\d-\d\d)T(\d\d)\.(\d\d)\.([\d.]+Z)\.db$/.exec(name)!
  return `${day}T${hour}:${minute}:${rest}`
}

export const manifestOf = (path: string): string => `${path}.json`
export const proofOf = (path: string): string => `${path}.proof.json`

/** Waits until the disk has a file's contents. */
export function sync(path: string): void {
  const file = openSync(path, 'r+')
  try {
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

/** A copy that is being made changes all the time; one untouched for so long was begun by a process that is gone (ms). */
const abandoned = 3_600_000

/** Takes away copies of a database that were begun and never finished. */
export function clearAway(file: string): void {
  const folder = backupFolder(file)
  const own = `${basename(file, '.db')} `
  for (const name of readdirSync(folder)) {
    const path = join(folder, name)
    if (!name.startsWith(own) || !/\.part(-journal)?$/.test(name)) continue
    if (Date.now() - statSync(path).mtimeMs > abandoned) rmSync(path, { force: true })
  }
}

/** Until the disk has it; a reader sees the whole file or the one before. */
export function writeWhole(path: string, text: string): void {
  const part = `${path}.part`
  const file = openSync(part, 'w', 0o600)
  try {
    writeSync(file, text)
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
  renameSync(part, path)
}

function read<Body>(path: string): Body | null {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return null
  }
}

export function backupAt(path: string): Backup {
  const name = basename(path)
  return {
    name,
    manifest: read<Manifest>(manifestOf(path)),
    madeAt: madeAtOf(name),
    bytes: statSync(path).size,
    proof: read<Proof>(proofOf(path)),
  }
}

/** All copies of a database, newest first. */
export function backupsOf(file: string): Backup[] {
  const folder = backupFolder(file)
  const own = `${basename(file, '.db')} `
  return readdirSync(folder)
    .filter((name) => name.startsWith(own) && isBackupName(name))
    .map((name) => backupAt(join(folder, name)))
    .sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1))
}
