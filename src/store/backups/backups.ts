import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { Lock } from '../lock.ts'
import { backupFolder, backupsOf, manifestOf, proofOf } from './files.ts'
import { dispensable } from './keep.ts'
import { inThread } from './thread.ts'
import type { Backup, BackupReason, BackupStore } from './types.ts'

/** Copies of a database file. One is made or proven at a time. */
export class FileBackups implements BackupStore {
  readonly #file: string
  readonly #now: () => Date
  readonly #turn = new Lock()

  constructor(file: string, now: () => Date) {
    this.#file = file
    this.#now = now
  }

  get folder(): string {
    return backupFolder(this.#file)
  }

  async list(): Promise<Backup[]> {
    return backupsOf(this.#file)
  }

  make(reason: BackupReason): Promise<Backup> {
    return this.#turn.hold(async () => {
      const made = await inThread({ make: { file: this.#file, reason, at: this.#now() } })
      for (const name of dispensable(backupsOf(this.#file)).filter((each) => each !== made.name)) this.#remove(name)
      return made
    })
  }

  prove(name: string): Promise<Backup | null> {
    return this.#turn.hold(async () => {
      if (!backupsOf(this.#file).some((each) => each.name === name)) return null
      return inThread({ prove: { path: join(this.folder, name), at: this.#now() } })
    })
  }

  #remove(name: string): void {
    const path = join(this.folder, name)
    for (const each of [path, manifestOf(path), proofOf(path)]) rmSync(each, { force: true })
  }
}
