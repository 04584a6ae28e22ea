// @ts-check
// Bundles the benchmarks as the server is bundled, and runs them: what is measured is the code as it is shipped. Run from their
// sources, functions made inside of functions are given names as they are made, which costs a plan a fifth of its time.
import { spawnSync } from 'node:child_process'
import { readdirSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { build } from 'esbuild'
import { root } from './steps.js'

/** What a file's process ends with where it has none of the names. */
const nothing = 3

const outdir = join(root, 'dist', 'bench')

/** @param {string} folder @param {string} ending */
const filesOf = (folder, ending) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith(ending))
    .map((path) => join(folder, path))

rmSync(outdir, { recursive: true, force: true })
await build({
  absWorkingDir: root,
  entryPoints: [
    'tests/bench/run.ts',
    ...['.bench.ts', '.process.ts', '.worker.ts'].flatMap((ending) => filesOf('tests/bench', ending)),
    ...filesOf('src', '.worker.ts'),
  ],
  entryNames: '[name]',
  outdir,
  bundle: true,
  splitting: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  logLevel: 'warning',
})

const words = process.argv.slice(2)
const names = words.filter((word) => !word.startsWith('--'))
const files = filesOf('tests/bench', '.bench.ts').map((path) => basename(path, '.bench.ts'))
const subjects = names.map((name) => name.split('.')[0] ?? '')
// A subject without a file of its own stands in another's, and only they know in which.
const wanted = subjects.length > 0 && subjects.every((subject) => files.includes(subject)) ? subjects : files
let found = false
let failed = false
// A process for each file: what others load would stand in the memory that is collected while a plan is measured.
for (const file of files.filter((each) => wanted.includes(each))) {
  const args = [join(outdir, 'run.js'), file, ...words, ...(found ? ['--no-head'] : [])]
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' })
  if (status !== nothing) found = true
  if (status !== 0 && status !== nothing) failed = true
}
if (!found) console.error(`No benchmark is called ${names.join(' or ')}.`)
process.exit(found && !failed ? 0 : 1)
