import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'

const read = (path: string) => readFileSync(join(projectRoot(), path), 'utf8')

/** Numbers of items with the files that docs/security.md names for them. */
const promised = [...read('docs/security.md').matchAll(/^\| (\d+\.\d+\.\d+) \|.*\| (tests\/[^|]+) \|$/gm)].map(
  ([, item, files]) => ({ item: item!, files: files!.trim().split(', ') }),
)

/** Numbers that stand in titles of tests: '(ASVS 6.3.1, 6.3.8)'. */
const tested = ['tests/api', 'tests/house'].flatMap((folder) =>
  readdirSync(join(projectRoot(), folder))
    .filter((name) => name.endsWith('.test.ts') && `${folder}/${name}` !== 'tests/house/security.test.ts')
    .flatMap((name) =>
      [...read(`${folder}/${name}`).matchAll(/ASVS ((?:\d+\.\d+\.\d+(?:, )?)+)\)/g)].flatMap(([, items]) =>
        items!.split(', ').map((item) => `${item} ${folder}/${name}`),
      ),
    ),
)

test('docs/security.md names each item with the files whose tests bear its number, and no other', () => {
  expect(promised.length).toBeGreaterThan(40)
  const named = promised.flatMap(({ item, files }) => files.map((file) => `${item} ${file}`))
  expect(named.filter((each) => !existsSync(join(projectRoot(), each.split(' ')[1]!)))).toEqual([])
  expect([...new Set(tested)].sort()).toEqual(named.sort())
})
