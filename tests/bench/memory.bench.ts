import { execFile } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import type { variants } from '../../seed/standard.ts'
import type { BenchEntry } from './entry.ts'

const script = fileURLToPath(new URL('memory.process.js', import.meta.url))

const memory = (name: string, of: keyof typeof variants): BenchEntry => ({
  name,
  unit: 'MB',
  better: 'lower',
  open: () => ({
    run: async () => {
      const { stdout } = await promisify(execFile)(process.execPath, ['--expose-gc', script, of])
      return Number(stdout)
    },
  }),
})

const entries: BenchEntry[] = [
  memory('memory.capacity60', 'capacity60'),
  memory('memory.12x12', 'twoGoalsOf12'),
  memory('memory.carries30', 'carries30'),
]

export default entries
