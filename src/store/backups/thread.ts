import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import { StoreError } from '../errors.ts'
import type { Done, Work } from './backup.worker.ts'
import type { Backup } from './types.ts'

/** Beside this file when run from the sources, beside the server when built. */
function workerFile(): string {
  const name = import.meta.url.endsWith('.ts') ? './fromSources.js' : './backup.worker.js'
  return fileURLToPath(new URL(name, import.meta.url))
}

/** Reads all of a database, so it is done in a thread of its own while the server answers. */
export function inThread(work: Work): Promise<Backup> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerFile(), { workerData: work, execArgv: [] })
    worker.once('message', (done: Done) => {
      if ('backup' in done) resolve(done.backup)
      else reject(new StoreError(done.failed))
    })
    worker.once('error', reject)
    worker.once('exit', (code) => reject(new StoreError(`The thread that copies ended with ${code}`)))
  })
}
