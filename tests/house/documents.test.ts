import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import description from '../../package.json' with { type: 'json' }
import { openApiDocument } from '../../src/api/http/openapi.ts'
import { projectRoot } from '../../src/root.ts'

const read = (path: string) => readFileSync(join(projectRoot(), path), 'utf8')
const exists = (path: string) => existsSync(join(projectRoot(), path))
const all = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].map((match) => match[1]!)
const scripts = description.scripts as { [name: string]: string }

for (const page of ['README.md', 'DEVELOPERS.md'])
  describe(page, () => {
    const text = read(page)

    test('names only commands that package.json has', () => {
      const names = all(text, /\bnpm (?:run )?([a-z:]+)\b(?= |`|$|\n)/g).filter(
        (name) => !['install', 'registry'].includes(name),
      )
      expect(names.length).toBeGreaterThan(1)
      expect(names.filter((name) => !/^\d/.test(name) && !(name in scripts))).toEqual([])
    })

    test('names only files that are there', () => {
      const paths = all(text, /`((?:src|web|seed|tests|prisma|scripts|docs|\.ci)\/[\w./-]+)`/g)
      expect(paths.filter((path) => !exists(path))).toEqual([])
    })

    test('links and pictures lead somewhere', () => {
      const links = all(text, /\]\(([^)]+)\)/g).filter((link) => !/^https?:/.test(link))
      expect(links.length).toBeGreaterThanOrEqual(page === 'README.md' ? 2 : 0)
      expect(links.filter((link) => !exists(link))).toEqual([])
    })
  })

test('README.md explains the settings that src/config.ts reads, with their defaults', () => {
  const config = read('src/config.ts')
  const rows = read('README.md')
    .split('\n')
    .filter((line) => /^\| `[A-Z_]+`/.test(line))
  const explained = rows.flatMap((row) => all(row.split('|')[1]!, /`([A-Z_]+)`/g))
  expect(explained.sort()).toEqual(all(config, /^ {2}([A-Z_]+): z/gm).sort())
  const defaults = [...config.matchAll(/^ {2}([A-Z_]+): z(?:(?!^ {2}[A-Z_]+: z)[\s\S])*?\.default\('([^']+)'\)/gm)]
  expect(defaults.length).toBe(7)
  for (const [, name, value] of defaults) {
    const row = rows.find((each) => each.startsWith(`| \`${name}\``))
    expect(row?.split('|')[2]?.trim(), name).toBe(value)
  }
})

test('README.md names only addresses that the server describes', () => {
  const paths = Object.keys((openApiDocument('0') as { paths: object }).paths)
  const named = all(read('README.md'), /`(?:GET |POST )?(\/(?:api|health)[\w/.]*)`/g)
  expect(named.length).toBeGreaterThan(1)
  expect(named.filter((path) => path !== '/api/openapi.json' && !paths.includes(path))).toEqual([])
})

test('DEVELOPERS.md maps every folder of the model', () => {
  const map = read('DEVELOPERS.md').match(/## Map\n[\s\S]*?```([\s\S]*?)```/)?.[1] ?? ''
  const indented = all(map, /^\s*([a-z./]+?)\/?\s{2,}/gm)
  const below = (name: string) => ['', 'src', 'src/model'].some((folder) => exists(join(folder, name)))
  expect(indented.length).toBeGreaterThan(15)
  expect(indented.filter((name) => !below(name))).toEqual([])
  const parts = readdirSync(join(projectRoot(), 'src/model'), { withFileTypes: true }).filter((entry) =>
    entry.isDirectory(),
  )
  expect(parts.map(({ name }) => name).filter((name) => !indented.includes(name))).toEqual([])
})

test('each decision has a date', () => {
  const decisions = read('DEVELOPERS.md').split('## Decisions')[1]!
  const paragraphs = decisions.split('\n\n').filter((paragraph) => paragraph.trim() !== '')
  expect(paragraphs.length).toBeGreaterThan(4)
  expect(paragraphs.filter((paragraph) => !/^\s*\*\*20\d\d-\d\d-\d\d · /.test(paragraph))).toEqual([])
})
