import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { BenchEntry, BenchResult } from './entry.ts'
import { measure } from './measure.ts'

/** Bundled and run by scripts/bench.js. `npm run bench [-- name …] [-- --json]`: a name measures itself and what begins with it and a dot. */
async function main(words: readonly string[]) {
  const json = words.includes('--json')
  const names = words.filter((word) => !word.startsWith('--'))
  const entries = (await all()).filter(
    ({ name }) => names.length === 0 || names.some((wanted) => matches(name, wanted)),
  )
  if (entries.length === 0) throw new Error(`No benchmark is called ${names.join(' or ')}.`)
  if (!json) console.log(row(['name', 'median', 'unit', 'better', 'ratio', 'baseline']))
  for (const entry of entries) {
    try {
      const result = await measure(entry)
      console.log(json ? JSON.stringify(result) : row(cells(result)))
    } catch (error) {
      // The others are still worth their time.
      console.error(`${entry.name} could not be measured:`, error)
      process.exitCode = 1
    }
  }
}

const matches = (name: string, wanted: string) => name === wanted || name.startsWith(`${wanted}.`)

async function all(): Promise<BenchEntry[]> {
  const files = readdirSync(import.meta.dirname)
    .filter((file) => file.endsWith('.bench.js'))
    .sort()
  const modules = await Promise.all(files.map((file) => import(pathToFileURL(join(import.meta.dirname, file)).href)))
  return modules.flatMap((module: { default: BenchEntry[] }) => module.default)
}

const digits = (value: number) => value.toPrecision(4)

function cells({ name, value, unit, better, baseline, ratio }: BenchResult): string[] {
  const against = baseline ? `${digits(baseline.value)} ${baseline.what}` : ''
  return [name, digits(value), unit, better, ratio === undefined ? '' : digits(ratio), against]
}

const widths = [18, 12, 20, 8, 8]
const row = (texts: string[]) =>
  texts
    .map((text, column) => text.padEnd(widths[column] ?? 0))
    .join(' ')
    .trimEnd()

await main(process.argv.slice(2))
