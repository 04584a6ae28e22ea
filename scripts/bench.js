// @ts-check
// Bundles the benchmarks as the server is bundled, and runs them: what is measured is the code as it is shipped. Run from their
// sources, functions made inside of functions are given names as they are made, which costs a plan a fifth of its time.
import { spawnSync } from 'node:child_process'
import { readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'esbuild'
import { root } from './steps.js'

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
const { status } = spawnSync(process.execPath, [join(outdir, 'run.js'), ...process.argv.slice(2)], { stdio: 'inherit' })
process.exit(status ?? 1)
