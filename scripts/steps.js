// @ts-check
import { spawn, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = dirname(dirname(fileURLToPath(import.meta.url)))

/** @param {string} path */
const at = (path) => join(root, path)

/**
 * Runs a short command in the project's folder and waits for it.
 * @param {string} command
 * @param {string[]} args
 */
export function run(command, args) {
  const result = spawnSync(command, args, { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 })
  return { ok: result.status === 0, output: `${result.stdout ?? ''}${result.stderr ?? ''}${result.error ?? ''}` }
}

/**
 * Like `run`, for what takes so long that silence would look like standing still, or beside which something else is done.
 * Its output is kept, or where it is `shown` goes on as it comes.
 * @param {string} command
 * @param {string[]} args
 * @param {{ shown?: boolean, env?: Record<string, string> }} [options]
 * @returns {Promise<{ ok: boolean, output: string }>}
 */
export function runLong(command, args, { shown = false, env = {} } = {}) {
  return new Promise((resolve) => {
    const stdio = shown ? 'inherit' : 'pipe'
    const child = spawn(command, args, { cwd: root, env: { ...process.env, ...env }, stdio: ['ignore', stdio, stdio] })
    let output = ''
    let seconds = 0
    const beat = setInterval(() => {
      seconds += 20
      if (!shown) console.log(`  ${basename(command)} ${args[0] ?? ''}: still at it after ${seconds} s`)
    }, 20_000)
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (chunk) => {
        output += chunk
      })
    const end = (/** @type {boolean} */ ok) => {
      clearInterval(beat)
      resolve({ ok, output })
    }
    child.once('error', (error) => {
      output += error
      end(false)
    })
    child.once('close', (status) => end(status === 0))
  })
}

/** A tool of node_modules, as it would be started by npm. @param {string} name */
export const tool = (name) => at(join('node_modules', '.bin', name))

/** @param {string} path @returns {string[]} */
function filesIn(path) {
  if (!existsSync(path)) return []
  if (statSync(path).isFile()) return [path]
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesIn(join(path, name)))
}

/** Contents, not times: a checkout of an older commit or a copied folder is told apart all the same. @param {string[]} inputs */
export function fingerprint(inputs) {
  const hash = createHash('sha256')
  for (const file of inputs.flatMap((input) => filesIn(at(input))))
    hash.update(file.slice(root.length)).update('\0').update(readFileSync(file)).update('\0')
  return hash.digest('hex')
}

/** The fingerprint that a step left behind is kept with what it made. @param {string} step */
const stampOf = (step) => at(join('dist', 'made-from', step))

/** @param {{ name: string, inputs: string[], output: string }} step */
export function isStale({ name, inputs, output }) {
  const stamp = stampOf(name)
  return !existsSync(at(output)) || !existsSync(stamp) || readFileSync(stamp, 'utf8') !== fingerprint(inputs)
}

/** @param {string} name @param {string} print */
export function leaveStamp(name, print) {
  mkdirSync(dirname(stampOf(name)), { recursive: true })
  writeFileSync(stampOf(name), print)
}

const lock = 'package-lock.json'

/** What is made from the sources. */
export const made = {
  client: {
    name: 'client',
    says: 'Generating the database client (about 3 s)',
    inputs: ['prisma/schema.prisma', 'prisma.config.ts', lock],
    output: 'src/store/generated/client.ts',
    command: [tool('prisma'), 'generate'],
  },
  clientForPostgresql: {
    name: 'clientForPostgresql',
    says: 'Generating the client for PostgreSQL (about 3 s)',
    inputs: ['prisma/postgresql/schema.prisma', 'prisma.config.ts', lock],
    output: 'src/store/postgresql/generated/client.ts',
    command: [tool('prisma'), 'generate', '--schema', 'prisma/postgresql/schema.prisma'],
  },
  web: {
    name: 'web',
    says: 'Building the screens (about 10 s)',
    inputs: ['web', 'src/model', 'vite.config.ts', 'scripts/offline.js', 'tsconfig.json', lock],
    output: 'dist/web/index.html',
    command: [tool('vite'), 'build', '--logLevel', 'warn'],
  },
  server: {
    name: 'server',
    says: 'Bundling the server (about 1 s)',
    inputs: ['src', 'seed', 'scripts', 'tsconfig.json', lock],
    output: 'dist/server.js',
    command: [process.execPath, 'scripts/bundle.js'],
  },
}

/** @typedef {{ version?: string, optional?: boolean, peer?: boolean, link?: boolean }} LockedPackage */

/** @param {string} path @returns {Record<string, LockedPackage>} */
const lockedPackages = (path) => JSON.parse(readFileSync(path, 'utf8')).packages

/** Whether node_modules holds what package-lock.json says. */
export function dependenciesAreCurrent() {
  const lock = at('package-lock.json')
  const installed = at('node_modules/.package-lock.json')
  if (!existsSync(installed)) return false
  if (statSync(lock).mtimeMs <= statSync(installed).mtimeMs) return true
  // `npm install` writes the lock last, so the times alone would have everything installed once more.
  const wanted = lockedPackages(lock)
  const found = lockedPackages(installed)
  const agrees = Object.entries(wanted).every(
    ([path, entry]) => path === '' || (found[path] ? found[path].version === entry.version : entry.optional === true),
  )
  const nothingMore = Object.keys(found).every((path) => path in wanted)
  if (!agrees || !nothingMore) return false
  const time = new Date()
  utimesSync(installed, time, time)
  return true
}
