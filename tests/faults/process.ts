import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { dirname, join } from 'node:path'
import { build } from 'esbuild'
import { projectRoot } from '../../src/root.ts'

/** The server and its threads. */
const parts = [
  'server.ts',
  'api/records/reading/read.worker.ts',
  'api/compute/compute.worker.ts',
  'api/exchange/files.worker.ts',
  'store/sqlite/intake.worker.ts',
  'store/backups/backup.worker.ts',
]

let built: Promise<string> | undefined

/** The server as it runs at an event, made ready once. */
export function builtServer(): Promise<string> {
  // Inside the project, where its packages and migrations are found.
  const outfile = join(projectRoot(), 'test-results', `server-${process.pid}`, 'server.js')
  built ??= build({
    entryPoints: parts.map((path) => join(projectRoot(), 'src', path)),
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    outdir: dirname(outfile),
    entryNames: '[name]',
  }).then(() => outfile)
  return built
}

export interface ServerProcess {
  url: string
  child: ChildProcess
  /** As a power cut would: without a word. */
  kill(): Promise<void>
}

/** The real server in a process of its own, on a free port, with the database in that file or at that address. @param further settings of its environment */
export async function startProcess(
  database: string,
  port = 0,
  further: NodeJS.ProcessEnv = {},
): Promise<ServerProcess> {
  const child = spawn(process.execPath, [await builtServer()], {
    cwd: projectRoot(),
    env: {
      ...process.env,
      PORT: String(port),
      HOST: '127.0.0.1',
      DATABASE_URL: urlOf(database),
      DEMO: '0',
      ...further,
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const url = await addressIn(child)
  return {
    url,
    child,
    kill: async () => {
      if (child.exitCode !== null || child.signalCode !== null) return
      child.kill('SIGKILL')
      await once(child, 'close')
    },
  }
}

const urlOf = (database: string) => (/^(file:|\w+:\/\/)/.test(database) ? database : `file:${database}`)

function addressIn(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = ''
    child.stdout!.on('data', (chunk) => {
      printed += chunk
      const found = /https?:\/\/[\d.]+:\d+|http:\/\/localhost:\d+/.exec(printed)
      if (found) resolve(found[0])
    })
    child.once('close', () => reject(new Error(`The server ended before it was ready: ${printed}`)))
  })
}
