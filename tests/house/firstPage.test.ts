import { expect, test } from 'vitest'
import { first as german } from '../../web/words/de/first.ts'
import { first } from '../../web/words/en/first.ts'
import { type SourceFile, sources } from './sources.ts'

/** What is loaded with a file: not what it loads later by `import()`. */
function atOnce({ text, loads }: SourceFile): string[] {
  const later = [...text.matchAll(/\bimport\(\s*['"]([^'"]+)['"]/g)].map((match) => match[1]!.split('/').at(-1))
  return loads.filter((name) => !later.includes(name.split('/').at(-1)))
}

test('the first page uses only the texts that are loaded with it', () => {
  const files = new Map(sources('web').map((file) => [file.path, file]))
  const reached = new Set<string>()
  const reach = (path: string): void => {
    const file = files.get(path)
    if (!file || reached.has(path)) return
    reached.add(path)
    for (const next of atOnce(file)) reach(next)
  }
  reach('web/main.tsx')
  expect(reached).toContain('web/screens/start/StartScreen.tsx')
  expect(reached).not.toContain('web/screens/games/GameScreen.tsx')
  expect(reached).not.toContain('web/words/en/index.ts')
  const used = [...reached].flatMap((path) =>
    [...files.get(path)!.text.matchAll(/\bwords\(\)\.(\w+)/g)].map((match) => ({ path, area: match[1]! })),
  )
  expect(used.length).toBeGreaterThan(20)
  expect(used.filter(({ area }) => !Object.hasOwn(first, area))).toEqual([])
  expect(Object.keys(german).sort()).toEqual(Object.keys(first).sort())
})
