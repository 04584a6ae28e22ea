import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { BenchFile, BenchResult } from './entry.ts'
import { measure } from './measure.ts'

/** Run by scripts/bench.js, for one file: `run.js plan [name …] [--json]`. A name measures itself and what begins with it and a dot. */
async function main([file = '', ...words]: readonly string[]) {
  const json = words.includes('--json')
  const names = words.filter((word) => !word.startsWith('--'))
  const module: BenchFile = await import(pathToFileURL(join(import.meta.dirname, `${file}.bench.js`)).href)
  const entries = module.default.filter(
    ({ name, onlyNamed }) => (names.length === 0 && !onlyNamed) || names.some((wanted) => matches(name, wanted)),
  )
  if (entries.length === 0) {
    process.exitCode = 3
    return
  }
  if (!json && !words.includes('--no-head')) console.log(row(['name', 'median', 'unit', 'better', 'ratio', 'baseline']))
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
  await module.close?.()
}

const matches = (name: string, wanted: string) => name === wanted || name.startsWith(`${wanted}.`)

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

// Whoever waits for a database's server alone would be taken for idle and ended.
const awake = setInterval(() => {}, 60_000)
await main(process.argv.slice(2))
clearInterval(awake)
