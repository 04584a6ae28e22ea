import { once } from 'node:events'
import { existsSync, readFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { createSecureContext, type Server as TlsServer } from 'node:tls'
import type { FastifyInstance } from 'fastify'
import { isLoopback } from './api/http/reach.ts'
import { buildApp, onlyWorkspace } from './app.ts'
import { claimAddress, claimHours } from './claiming.ts'
import { type Config, ConfigError, readConfig } from './config.ts'
import { projectRoot } from './root.ts'
import { seedIfEmpty } from './seeding.ts'
import { openStore, type Store, StoreError, scheduleBackups } from './store/index.ts'

/** How long a stop waits for requests under way (ms). */
const longestWait = 8000

async function main() {
  const config = readConfig(process.env)
  const store = await openDatabase(config)
  const seeded = config.demo && (await store.alone('demo', () => seedIfEmpty(store, onlyWorkspace)))
  if (seeded) console.log('The demo season Breakwater is put in')
  const web = join(projectRoot(), 'dist', 'web')
  const app = await buildApp({
    store,
    webRoot: existsSync(web) ? web : undefined,
    logLevel: config.logLevel,
    metricsToken: config.metricsToken,
    ...(config.trustProxy && { trustProxy: config.trustProxy }),
    https: config.tls ? readPair(config.tls) : undefined,
    claimed: () => void openToOthers(app, config),
  })
  const endBackups = scheduleBackups(store.backups, {
    every: config.backupHours,
    failed: (error) => app.log.error(error, 'The database could not be copied, or its copy is not whole'),
  })
  stopGently(async () => {
    const patience = setTimeout(() => app.server.closeAllConnections(), longestWait)
    await app.close()
    clearTimeout(patience)
    await endBackups()
    await store.close()
  })
  if (config.tls) renewOnSignal(app, config.tls)
  const isClaimed = await store.entrance.isClaimed()
  await app.listen({ port: config.port, host: isClaimed ? config.host : onlyHere(config) })
  const address = addressOf(app.server.address() as AddressInfo, config)
  if (!isClaimed) console.log(await invitation(store, address, config))
  console.log('Ready. Open this address in a browser:')
  console.log(address)
}

const readPair = ({ certificate, key }: NonNullable<Config['tls']>) => ({
  cert: readFileSync(certificate),
  key: readFileSync(key),
})

/** A certificate is good for some weeks: SIGHUP reads the files anew. What can not be used leaves the one that is in use. */
function renewOnSignal({ server }: FastifyInstance, tls: NonNullable<Config['tls']>): void {
  process.on('SIGHUP', () => {
    try {
      const pair = readPair(tls)
      // Throws before anything is changed.
      createSecureContext(pair)
      ;(server as unknown as TlsServer).setSecureContext(pair)
      console.log('The certificate was read anew')
    } catch (error) {
      console.error(`The certificate stays as it was: ${explain(error, process.env)}`)
    }
  })
}

/** Until it belongs to somebody, whoever reaches the server is its lead. */
const onlyHere = ({ host }: Config): string => (isLoopback(host) ? host : '127.0.0.1')

/** How somebody on this machine makes the server theirs. The link is told here and nowhere else. */
async function invitation(store: Store, address: string, { host }: Config): Promise<string> {
  const { token } = await store.entrance.claimLink(await store.ensureWorkspace(onlyWorkspace), claimHours)
  const later = isLoopback(host) ? 'it listens' : `whatever HOST says, it listens`
  return [
    `This server belongs to nobody yet. Until it does, ${later} on this machine only, and whoever sits here may do everything.`,
    `To make it yours and let others in, open this link within ${claimHours} hours; it is good once, and the next start prints a new one:`,
    `  ${claimAddress(address, token)}`,
  ].join('\n')
}

/** Listens where the settings say, from the moment at which somebody must be signed in. */
async function openToOthers(app: FastifyInstance, config: Config): Promise<void> {
  if (isLoopback(config.host)) return
  const { port } = app.server.address() as AddressInfo
  try {
    await relisten(app, { port, host: config.host })
    const address = addressOf(app.server.address() as AddressInfo, config)
    console.log(`The server belongs to somebody now and listens where HOST says: ${address}`)
  } catch (error) {
    console.error(explain(error, process.env))
    await relisten(app, { port, host: onlyHere(config) })
    console.error('So it listens on this machine only, as before.')
  }
}

/** The same server on another address: requests under way are answered, and connections stay. */
async function relisten({ server }: FastifyInstance, to: { port: number; host: string }): Promise<void> {
  if (server.listening) server.close()
  server.listen(to)
  await once(server, 'listening')
}

async function openDatabase({ databaseUrl, copyBefore }: Config): Promise<Store> {
  return openStore(databaseUrl, {
    copyBefore,
    migrated: ({ applied, backup }) => {
      if (applied.length === 0) return
      // Of a server's address nothing is repeated: it may hold a password.
      if (backup === null && databaseUrl.startsWith('file:'))
        return console.log(`A new database is made: ${databaseUrl}`)
      if (backup === null)
        return console.log(`The database’s tables are made, or changed without a copy: ${applied.join(', ')}`)
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
  if (/^ERR_OSSL_/.test(code ?? ''))
    return `TLS_CERT and TLS_KEY must be a certificate and its own key, both as PEM (${(error as Error).message})`
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
