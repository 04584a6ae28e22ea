import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { glossary } from '../../web/words/en/glossary.ts'

test('the help page and README.md explain the same words alike', () => {
  const section = readFileSync(join(projectRoot(), 'README.md'), 'utf8').split('## Words')[1]!.split('\n## ')[0]!
  const rows = [...section.matchAll(/^\| (?!word |---)(.+?) \| (.+) \|$/gm)].map(([, word, means]) => ({ word, means }))
  expect(rows.length).toBeGreaterThan(20)
  expect(Object.values(glossary)).toEqual(rows)
})
