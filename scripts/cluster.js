// @ts-check
// A PostgreSQL server in a temporary folder, on this machine only, for tests and for trying things: prints its address, and goes with its
// folder when its input ends, which happens however whoever started it comes to an end. `node scripts/cluster.js folder port` keeps the folder
// and goes on with what is in it.
import { spawn, spawnSync } from 'node:child_process'
import { chownSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serverPrograms } from './postgresql.js'

const user = 'cyclewright'

function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })
}

/** The server refuses to run as root: then it runs as the user that its package made. */
function whom() {
  if (process.getuid?.() !== 0) return {}
  const idOf = (/** @type {string} */ what) =>
    Number(spawnSync('id', [what, 'postgres'], { encoding: 'utf8' }).stdout.trim())
  return { uid: idOf('-u'), gid: idOf('-g') }
}

/**
 * Nobody else is let in: the address is this machine's own, and what is in it is of tests.
 * @param {string} programs @param {{ folder: string, data: string, as: { uid?: number, gid?: number } }} where
 */
function make(programs, { folder, data, as }) {
  const made = spawnSync(
    join(programs, 'initdb'),
    ['-D', data, '-U', user, '-A', 'trust', '-E', 'UTF8', '--locale=C.UTF-8', '--no-sync'],
    { ...as, cwd: folder, encoding: 'utf8' },
  )
  if (made.status !== 0) throw new Error(made.stderr)
}

async function main() {
  const programs = serverPrograms()
  if (programs === null) throw new Error('PostgreSQL is not installed here: apt-get install postgresql')
  const [given, at] = process.argv.slice(2)
  const folder = given ?? mkdtempSync(join(tmpdir(), 'postgresql-'))
  if (given === undefined) process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
  const as = whom()
  if (as.uid !== undefined) chownSync(folder, as.uid, as.gid)
  const data = join(folder, 'data')
  if (!existsSync(data)) make(programs, { folder, data, as })
  const port = at ?? (await freePort())
  const settings = ['listen_addresses=127.0.0.1', 'unix_socket_directories=', 'max_connections=200']
  const server = spawn(
    join(programs, 'postgres'),
    ['-D', data, '-p', String(port), ...settings.flatMap((each) => ['-c', each])],
    { ...as, cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] },
  )
  let said = ''
  server.stderr.on('data', (chunk) => {
    if (said.includes('ready to accept connections')) return
    said += chunk
    if (said.includes('ready to accept connections')) console.log(`postgresql://${user}@127.0.0.1:${port}/postgres`)
  })
  server.once('exit', (status) => {
    if (!said.includes('ready to accept connections')) console.error(said)
    process.exit(status ?? 1)
  })
  // At once: what is in it is thrown away.
  const stop = () => server.kill('SIGQUIT')
  process.stdin.resume().once('end', stop).once('error', stop)
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
}

await main()
