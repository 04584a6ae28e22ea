// Writes src/model/match/kernel/eventsBytes.ts: the event loop compiled to WebAssembly. The compiler is large and needed by
// nobody who only builds or tests, so it is no dependency: npx fetches the version named here when the loop was changed.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const compiler = 'assemblyscript@0.28.20'
const folder = new URL('../src/model/match/kernel/', import.meta.url)
/** In an order in which each part needs only those before it. */
const files = [
  'prelude.as',
  'state.ts',
  'holding.ts',
  'pieces.ts',
  'stages.ts',
  'habit.ts',
  'decisions.ts',
  'places.ts',
  'events.ts',
]
const marker = '// --- compiled from here on ---'

/** What is compiled: places of the memory as constants, the prelude, and the loop itself. */
export async function source() {
  const [prelude, ...parts] = await Promise.all(files.map((name) => readFile(new URL(name, folder), 'utf8')))
  const { at } = await layout()
  const constants = Object.entries(at).map(([name, place]) => `const AT_${name}: i32 = ${place}`)
  const loop = parts.map(compilable).join('\n')
  return [...constants, prelude, loop].join('\n')
}

/**
 * A part without its imports; of what it exports only the loop itself and what comes before it are asked for from outside.
 * What observed robots do stays exported too, because else it would be put into the decisions of all robots, which slows them.
 */
function compilable(part) {
  return part
    .slice(part.indexOf(marker) + marker.length)
    .replace(/^export (?!function (?:clear|playTeleop|decideByHabit|waitsByHabit))/gm, '')
    .replace(/\bat\.(\w+)/g, 'AT_$1')
}

/** The layout is the loop's TypeScript; what it exports is plain. */
async function layout() {
  const { register } = await import('tsx/esm/api')
  const unregister = register()
  const loaded = await import(new URL('layout.ts', folder).href)
  await unregister()
  return loaded
}

/** Says which source some bytes were made from. */
export const fingerprint = (text) => createHash('sha256').update(text).digest('hex')

const inlining = [
  '-O4',
  '--flexible-inline-max-function-size=200',
  '--always-inline-max-function-size=60',
  '--inline-functions-with-loops',
  ...['simd', 'bulk-memory', 'nontrapping-float-to-int', 'sign-ext', 'mutable-globals'].map((f) => `--enable-${f}`),
]

async function compiled(text) {
  const work = await mkdtemp(join(tmpdir(), 'match-kernel-'))
  try {
    await writeFile(join(work, 'events.ts'), text)
    const options = [
      'events.ts',
      '-o',
      'events.wasm',
      '-O3',
      '--runtime',
      'stub',
      '--noAssert',
      '--enable',
      'simd',
      '--importMemory',
    ]
    const run = (...command) => {
      const { status } = spawnSync('npx', ['--yes', '--package', compiler, ...command], { cwd: work, stdio: 'inherit' })
      if (status !== 0) throw new Error('the event loop could not be compiled')
    }
    run('asc', ...options)
    // Calls cost about a twelfth of a match: what is called from several places is put in each of them.
    run('wasm-opt', ...inlining, 'events.wasm', '-o', 'events.wasm')
    return await readFile(join(work, 'events.wasm'))
  } finally {
    await rm(work, { recursive: true, force: true })
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = await source()
  const bytes = (await compiled(text))
    .toString('base64')
    .match(/.{1,112}/g)
    .join('\n')
  const file = `/** Made from layout.ts, prelude.as and the parts of the event loop by \`npm run kernel:match\` (${compiler}). */
export const eventsBytes = \`
${bytes}
\`

/** Of what was compiled: a test tells when it is out of date. */
export const eventsSource = '${fingerprint(text)}'
`
  await writeFile(new URL('eventsBytes.ts', folder), file)
  process.stdout.write('src/model/match/kernel/eventsBytes.ts is written.\n')
}
