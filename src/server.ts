import { existsSync, readFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { buildApp, onlyWorkspace } from './app.ts'
import { type Config, ConfigError, readConfig } from './config.ts'
import { projectRoot } from './root.ts'
import { seedIfEmpty } from './seeding.ts'
import { openStore, type Store, StoreError } from './store/index.ts'

/** How long a stop waits for requests under way (ms). */
const longestWait = 3000

async function main() {
  const config = readConfig(process.env)
  const store = await openDatabase(config)
  if (config.demo && (await seedIfEmpty(store, onlyWorkspace))) console.log('The demo season Breakwater is put in')
  const web = join(projectRoot(), 'dist', 'web')
  const app = await buildApp({
    store,
    webRoot: existsSync(web) ? web : undefined,
    logLevel: config.logLevel,
    https: config.tls ? { cert: readFileSync(config.tls.certificate), key: readFileSync(config.tls.key) } : undefined,
  })
  stopGently(async () => {
    const patience = setTimeout(() => app.server.closeAllConnections(), longestWait)
    await app.close()
    clearTimeout(patience)
    await store.close()
  })
  await app.listen({ port: config.port, host: config.host })
  console.log('Ready. Open this address in a browser:')
  console.log(addressOf(app.server.address() as AddressInfo, config))
}

async function openDatabase({ databaseUrl }: Config): Promise<Store> {
  return openStore(databaseUrl, {
    migrated: ({ applied, backup }) => {
      if (applied.length === 0) return
      if (backup === null) return console.log(`A new database is made: ${databaseUrl}`)
      console.log(`The database was copied to ${backup} and then brought to its newest form: ${applied.join(', ')}`)
    },
  })
}

function addressOf({ address, port, family }: AddressInfo, config: Config): string {
  const everywhere = address === '0.0.0.0' || address === '::'
  const host = everywhere ? 'localhost' : family === 'IPv6' ? `[${address}]` : address
  return `${config.tls ? 'https' : 'http'}://${host}:${port}`
}

/** Requests under way are answered before the process ends, if they end soon; a second signal does not wait for them. */
function stopGently(close: () => Promise<void>) {
  let stopping = false
  const stop = async () => {
    if (stopping) process.exit(1)
    stopping = true
    await close()
    process.exit(0)
  }
  process.on('SIGINT', stop)
  process.on('SIGTERM', stop)
}

/** A sentence where the person who starts the server can do something, otherwise all that is known. */
function explain(error: unknown, { PORT = '3000', HOST = '127.0.0.1' }: NodeJS.ProcessEnv): unknown {
  if (error instanceof ConfigError || error instanceof StoreError) return error.message
  const { code } = error as NodeJS.ErrnoException
  if (code === 'EADDRINUSE') return `Port ${PORT} is taken by another program. Name another: PORT=3001 npm start`
  if (code === 'EACCES') return `This user may not listen on port ${PORT}. Name one above 1023: PORT=3000 npm start`
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND') return `HOST must be an address of this machine, got "${HOST}".`
  return error
}

try {
  await main()
} catch (error) {
  console.error(explain(error, process.env))
  process.exit(1)
}
