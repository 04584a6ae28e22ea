import { parentPort, workerData } from 'node:worker_threads'
import { giveWay } from './giveWay.ts'
import { makeBackup } from './make.ts'
import { opensHere } from './opens.ts'
import { proveBackup } from './prove.ts'
import type { Backup, BackupReason } from './types.ts'

/** What a thread is started for: one copy, or one proof. */
export type Work = { make: { file: string; reason: BackupReason; at: Date } } | { prove: { path: string; at: Date } }

export type Done = { backup: Backup } | { failed: string }

async function done(work: Work): Promise<Backup> {
  if ('make' in work) return makeBackup(work.make.file, work.make)
  const { path, at } = work.prove
  return proveBackup(path, { opens: opensHere, now: () => at })
}

giveWay()
try {
  parentPort!.postMessage({ backup: await done(workerData) } satisfies Done)
} catch (error) {
  parentPort!.postMessage({ failed: error instanceof Error ? error.message : String(error) } satisfies Done)
}
