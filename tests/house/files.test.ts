import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { sources, withoutProse } from './sources.ts'

const everything = sources('src', 'web', 'seed', 'tests', 'scripts')
const folders = (path: string) =>
  readdirSync(join(projectRoot(), path), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)

test('no file is longer than 400 lines', () => {
  const long = everything
    .map(({ path, text }) => ({ path, lines: text.split('\n').length }))
    .filter(({ lines }) => lines > 400)
  expect(long).toEqual([])
})

test('half of the files of src are shorter than 80 lines', () => {
  const lengths = sources('src').map(({ text }) => text.split('\n').length)
  expect(lengths.filter((lines) => lines < 80).length / lengths.length).toBeGreaterThan(0.5)
})

test('each part of the model has a table of contents', () => {
  const without = folders('src/model').filter((name) => !existsSync(join(projectRoot(), 'src/model', name, 'index.ts')))
  expect(without).toEqual([])
})

test('the folders are those that DEVELOPERS.md maps, and the tests mirror them', () => {
  expect(folders('src').sort()).toEqual(['api', 'jobs', 'live', 'model', 'store'])
  const beside = ['bench', 'browser', 'faults', 'field', 'house', 'postgresql', 'reference', 'seed', 'theory', 'web']
  expect(folders('tests').filter((name) => !beside.includes(name) && !folders('src').includes(name))).toEqual([])
})

test('nothing is left for later and nothing is switched off', () => {
  const left = /\b(it|test|describe)\.(skip|only|todo)\b|@ts-(ignore|nocheck|expect-error)\b/
  const notes = /\b(TODO|FIXME|XXX)\b/
  const others = everything.filter(({ path }) => path !== 'tests/house/files.test.ts')
  const found = others.filter(
    ({ text }) => left.test(withoutProse(text)) || notes.test(text) || /@ts-(ignore|nocheck)/.test(text),
  )
  expect(found.map(({ path }) => path)).toEqual([])
})
