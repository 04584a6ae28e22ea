import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { projectRoot } from '../../src/root.ts'
import type { BenchEntry } from './entry.ts'

interface Chunk {
  file: string
  imports?: string[]
  isEntry?: boolean
}

const folder = join(projectRoot(), 'dist', 'web')

/** Script that the first page asks for before it can show anything: the entry and what it imports statically. */
function firstScripts(): string[] {
  const manifest: { [name: string]: Chunk } = JSON.parse(readFileSync(join(folder, '.vite', 'manifest.json'), 'utf8'))
  const wanted = new Set(Object.keys(manifest).filter((name) => manifest[name]?.isEntry))
  for (const name of wanted) for (const next of manifest[name]?.imports ?? []) wanted.add(next)
  return [...wanted].map((name) => manifest[name]!.file).filter((file) => file.endsWith('.js'))
}

const kilobytes = (file: string) => gzipSync(readFileSync(join(folder, file))).length / 1000

const entries: BenchEntry[] = [
  {
    name: 'web.first',
    unit: 'kB compressed',
    better: 'lower',
    open: () => ({ run: () => firstScripts().reduce((sum, file) => sum + kilobytes(file), 0) }),
  },
]

export default entries
