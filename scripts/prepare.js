// @ts-check
// Runs before `npm start`, `npm test` and their like, on a clone that may hold nothing but its files. So it imports no package.
import { dependenciesAreCurrent, fingerprint, isStale, leaveStamp, run, runLong, tool } from './steps.js'

const lock = 'package-lock.json'

const made = {
  client: {
    name: 'client',
    says: 'Generating the database client (about 3 s)',
    inputs: ['prisma/schema.prisma', 'prisma.config.ts', lock],
    output: 'src/store/generated/client.ts',
    command: [tool('prisma'), 'generate'],
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
    inputs: ['src', 'seed', 'scripts/bundle.js', 'tsconfig.json', lock],
    output: 'dist/server.js',
    command: [process.execPath, 'scripts/bundle.js'],
  },
}

/** @param {string} sentence @param {string} output @returns {never} */
function stop(sentence, output) {
  if (output.trim() !== '') console.error(output.trim())
  console.error(`\n${sentence}`)
  process.exit(1)
}

function compilerIsMissing() {
  return ['python3', 'make', 'g++'].filter((name) => !run(name, ['--version']).ok)
}

const driverSentence = () => {
  const missing = compilerIsMissing()
  return missing.length === 0
    ? 'The database driver better-sqlite3 could neither be downloaded nor compiled; what npm says stands above.'
    : `The database driver better-sqlite3 could not be downloaded ready-made, and to compile it ${missing.join(', ')} must be ` +
        'installed (on Debian: apt-get install python3 make g++). Then run the command again.'
}

function driverWorks() {
  return run(process.execPath, ['-e', "new (require('better-sqlite3'))(':memory:').close()"]).ok
}

async function install() {
  if (!dependenciesAreCurrent()) {
    console.log('Installing dependencies from the npm registry (about 1 minute)')
    // No package may run anything of its own: one would download an engine that is not used. The driver's turn is next.
    const { ok, output } = await runLong('npm', ['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund'])
    if (!ok) stop('The dependencies could not be installed. Is the npm registry reachable?', output)
  }
  if (driverWorks()) return
  console.log('Making the database driver ready (some seconds; 1 to 2 minutes where it is compiled)')
  const { ok, output } = await runLong('npm', ['rebuild', 'better-sqlite3'])
  if (!ok || !driverWorks()) stop(driverSentence(), output)
}

/** @param {(typeof made)['web']} step */
function make(step) {
  if (!isStale(step)) return
  console.log(step.says)
  const print = fingerprint(step.inputs)
  const [command = '', ...args] = step.command
  const { ok, output } = run(command, args)
  if (!ok) stop(`This step failed: ${step.says.replace(/ \(.*/, '')}.`, output)
  leaveStamp(step.name, print)
}

const wanted = process.argv.slice(2)
await install()
for (const step of Object.values(made)) if (wanted.length === 0 || wanted.includes(step.name)) make(step)
