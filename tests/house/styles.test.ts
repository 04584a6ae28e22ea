import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { sources } from './sources.ts'

const read = (path: string) => readFileSync(join(projectRoot(), path), 'utf8')
const sheets = readdirSync(join(projectRoot(), 'web'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.css'))
  .map((name) => join('web', name))
const scripts = new Map(sources('web').map((file) => [file.path, file]))

/** By class, the style sheets with rules for it. */
const rulesFor = new Map<string, Set<string>>()
for (const sheet of sheets)
  for (const [, name] of read(sheet)
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .matchAll(/\.([a-zA-Z][\w-]*)/g))
    rulesFor.set(name!, (rulesFor.get(name!) ?? new Set()).add(sheet))

const lazy = /\bimport\(\s*'(\.[^']+)'/g
const lazyIn = (path: string) =>
  [...(scripts.get(path)?.text ?? '').matchAll(lazy)].map(([, name]) => join(dirname(path), name!))

/** What a page or a lazily loaded part brings with it: scripts and style sheets that load with it. */
function loadedWith(root: string): Set<string> {
  const found = new Set([root])
  for (const path of found) {
    const apart = new Set(lazyIn(path))
    const next = path.endsWith('.css')
      ? [...read(path).matchAll(/@import "(\.[^"]+)"/g)].map(([, name]) => join(dirname(path), name!))
      : (scripts.get(path)?.loads ?? []).filter((name) => !apart.has(name))
    for (const each of next) if (scripts.has(each) || sheets.includes(each)) found.add(each)
  }
  return found
}

/** The class names that an element of the file is given, as far as they are written out. */
function classesIn(text: string): string[] {
  return [...text.matchAll(/className=(?:"([^"]*)"|\{((?:[^{}]|\{[^{}]*\})*)\})/g)].flatMap(([, plain, expression]) => {
    if (plain !== undefined) return plain.split(/\s+/)
    const written = expression!.replace(/[!=]== '[^']*'/g, '').matchAll(/'([^']*)'|`([^`]*)`/g)
    return [...written].flatMap(([, quoted, template]) =>
      (quoted ?? template!.replace(/\$\{[^}]*\}/g, '$')).split(/\s+/).filter((name) => !name.includes('$')),
    )
  })
}

/** Of a page and whatever it loads later: 'file .class (style sheets)' that nothing loaded by then brings. */
function unstyled(page: string): string[] {
  const first = loadedWith(page)
  const parts = [first]
  const roots = new Set([page])
  for (const own of parts)
    for (const each of [...own].flatMap(lazyIn).filter((name) => !roots.has(name))) {
      roots.add(each)
      parts.push(loadedWith(each))
    }
  const ever = new Set(parts.flatMap((own) => [...own]))
  const missing = new Set<string>()
  for (const own of parts) {
    for (const path of own) {
      for (const name of classesIn(scripts.get(path)?.text ?? '')) {
        const rules = [...(rulesFor.get(name) ?? [])].filter((sheet) => ever.has(sheet))
        if (rules.length > 0 && !rules.some((sheet) => own.has(sheet) || first.has(sheet)))
          missing.add(`${path} .${name} (${rules.join(', ')})`)
      }
    }
  }
  return [...missing]
}

describe('a screen that is opened directly has all of its looks', () => {
  test.each(['web/main.tsx', 'web/stands/main.tsx'])('from %s', (page) => {
    expect(loadedWith(page).size).toBeGreaterThan(20)
    expect(unstyled(page)).toEqual([])
  })
})
