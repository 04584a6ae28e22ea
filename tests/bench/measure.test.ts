import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { BenchEntry } from './entry.ts'
import { measure, median } from './measure.ts'

test('the median of an odd and of an even number of values', () => {
  expect(median([9, 1, 5])).toBe(5)
  expect(median([9, 1, 5, 7])).toBe(6)
})

test('an entry is run at least five times, in turn with its baseline, and closed', async () => {
  const order: string[] = []
  const values = [3, 1, 2, 5, 4]
  const take = (what: string, value: number) => {
    order.push(what)
    return value
  }
  const entry: BenchEntry = {
    name: 'some.thing',
    unit: 'ms',
    better: 'lower',
    runs: 2,
    open: () => ({
      run: () => take('run', values.shift()!),
      baseline: { what: 'a loop', run: () => take('baseline', 1.5) },
      close: () => void order.push('close'),
    }),
  }
  expect(await measure(entry)).toEqual({
    name: 'some.thing',
    value: 3,
    unit: 'ms',
    better: 'lower',
    baseline: { what: 'a loop', value: 1.5 },
    ratio: 2,
  })
  expect(order).toEqual([...Array.from({ length: 5 }, () => ['run', 'baseline']).flat(), 'close'])
})

test('the names of the benchmarks are unique and say their subject and their case', async () => {
  const files = readdirSync(import.meta.dirname).filter((file) => file.endsWith('.bench.ts'))
  const modules: { default: BenchEntry[] }[] = await Promise.all(
    files.map((file) => import(join(import.meta.dirname, file))),
  )
  const names = modules.flatMap((module) => module.default.map(({ name }) => name))
  expect(names.length).toBeGreaterThan(0)
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([])
  expect(names.filter((name) => !/^[a-z]+\.[a-z0-9]+$/.test(name))).toEqual([])
})
