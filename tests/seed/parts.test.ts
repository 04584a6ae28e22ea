import { expect, test } from 'vitest'
import { parts } from '../../seed/parts.ts'
import { part } from '../../src/api/contracts/timings/index.ts'

test('The demo’s parts are what the contract of a part allows, each with its source and date', () => {
  for (const each of parts) expect(part.safeParse(each).error?.issues ?? [], each.id).toEqual([])
  expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length)
  expect(new Set(parts.map(({ kind }) => kind)).size).toBe(6)
})

test('They are generic and say that they are invented', () => {
  for (const { name, source } of parts) {
    expect(name).toMatch(/^Generic /)
    expect(source).toMatch(/^Invented/)
  }
})
