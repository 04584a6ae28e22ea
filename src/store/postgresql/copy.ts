import { spawn } from 'node:child_process'
import { chmodSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { projectRoot } from '../../root.ts'
import { StoreError } from '../errors.ts'
import { shown } from './connection.ts'

/** Copies the database as it is at one moment into `data/backups`, by PostgreSQL's own program. Returns the copy's path. */
export async function copyDatabase(url: string, at: Date): Promise<string> {
  const folder = join(projectRoot(), 'data', 'backups')
  mkdirSync(folder, { recursive: true })
  const address = new URL(url)
  const name = decodeURIComponent(address.pathname.slice(1)).replace(/[^\w-]/g, '_') || 'database'
  const copy = join(folder, `${name} ${at.toISOString().replaceAll(':', '.')}.dump`)
  // Every user of the machine sees a program's arguments: the password goes another way.
  const password = decodeURIComponent(address.password)
  address.password = ''
  const wrong = await run(['--format=custom', `--file=${copy}`, `--dbname=${address.href}`], {
    ...process.env,
    ...(password === '' ? {} : { PGPASSWORD: password }),
  })
  if (wrong !== null) {
    rmSync(copy, { force: true })
    throw new StoreError(
      `Before its tables are changed, ${shown(url)} is to be copied by pg_dump: ${wrong} Install the client programs of the ` +
        'server’s version, or make a copy yourself and start once with COPY_BEFORE_MIGRATION=0.',
    )
  }
  chmodSync(copy, 0o600)
  return copy
}

/** Null: it did what it should; else what went wrong. */
function run(args: readonly string[], env: NodeJS.ProcessEnv): Promise<string | null> {
  return new Promise((resolve) => {
    const child = spawn('pg_dump', args, { env, stdio: ['ignore', 'ignore', 'pipe'] })
    let said = ''
    child.stderr.on('data', (chunk) => {
      said += chunk
    })
    child.once('error', () => resolve('it is not installed here.'))
    child.once('close', (status) => resolve(status === 0 ? null : said.trim() || `it ended with the status ${status}.`))
  })
}
