// @ts-check
import { readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const root = dirname(dirname(fileURLToPath(import.meta.url)))

/** Worker threads are files of their own: every `*.worker.ts` becomes one beside the server. */
const workers = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.worker.ts'))
  .map((path) => join('src', path))

/** What is asked of the database from outside of the server, for where nothing but what is shipped is installed, as in a container. */
const commands = ['backup', 'move', 'person', 'workspace'].map((name) => join('scripts', `${name}.ts`))

await build({
  absWorkingDir: root,
  entryPoints: ['src/server.ts', ...workers, ...commands],
  entryNames: '[name]',
  outdir: 'dist',
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  sourcemap: true,
  logLevel: 'warning',
})
