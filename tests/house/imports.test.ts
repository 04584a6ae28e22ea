import { describe, expect, test } from 'vitest'
import { importsOf, type SourceFile, sources, withoutProse } from './sources.ts'

/** 'file imports what' for each import that breaks the rule. */
const breaches = (files: SourceFile[], allowed: (name: string, file: SourceFile) => boolean) =>
  files.flatMap((file) =>
    file.imports.filter((name) => !allowed(name, file)).map((name) => `${file.path} imports ${name}`),
  )

describe('the model is pure', () => {
  const model = sources('src/model')

  test('it imports itself and numerical libraries only', () => {
    const numerical = /^(@stdlib\/[a-z0-9-]+|ml-matrix|simple-statistics)$/
    expect(model.length).toBeGreaterThan(20)
    expect(breaches(model, (name) => name.startsWith('src/model/') || numerical.test(name))).toEqual([])
  })

  test('it reads no clock, no chance, no environment, no network and no screen', () => {
    const impure =
      /\bDate\b|\bMath\.random\b|\bperformance\b|\bprocess\b|\bglobalThis\b|\bfetch\(|\bsetTimeout\b|\bconsole\b|\bwindow\b|\bdocument\.|\bcrypto\b/
    const found = model.filter(({ text }) => impure.test(withoutProse(text)))
    expect(found.map(({ path, text }) => `${path}: ${impure.exec(withoutProse(text))?.[0]}`)).toEqual([])
  })
})

describe('each library is known in one place', () => {
  const everything = sources('src', 'web', 'seed')

  test('the database in src/store alone', () => {
    const database = /prisma|better-sqlite3|^pg(-boss)?$|^src\/store\/(postgresql\/)?generated/
    const outside = everything.filter(({ path }) => !path.startsWith('src/store/'))
    expect(breaches(outside, (name) => !database.test(name))).toEqual([])
  })

  test('the checks of input in src/api and src/config.ts alone', () => {
    const outside = everything.filter(({ path }) => !/^src\/(api\/|config\.ts$)/.test(path))
    expect(breaches(outside, (name) => !/^zod/.test(name))).toEqual([])
  })

  test('what is inside the store stays there: others import its table of contents or its types', () => {
    const outside = everything.filter(({ path }) => !path.startsWith('src/store/'))
    const entrances = ['src/store/index.ts', 'src/store/types.ts']
    expect(breaches(outside, (name) => !name.startsWith('src/store/') || entrances.includes(name))).toEqual([])
  })
})

test('the screens load nothing of Node, of the server or of the store; of the last two they know types', () => {
  const server = /^(node:|fastify|@fastify|prisma|@prisma)|^src\/(store|api|server|app|config|root)/
  const reaching = sources('web').flatMap(({ path, loads }) =>
    loads.filter((name) => server.test(name)).map((name) => `${path} loads ${name}`),
  )
  expect(reaching).toEqual([])
})

test('the store and the model know nothing of the web', () => {
  const inner = sources('src/model', 'src/store')
  expect(
    breaches(inner, (name) => !/^(fastify|@fastify|@trpc|react)|^src\/(api|app|server|config)|^web\//.test(name)),
  ).toEqual([])
})

test('only src/server.ts listens', () => {
  const listening = sources('src').filter(({ text }) => /(?<!live)\.listen\(/.test(withoutProse(text)))
  expect(listening.map(({ path }) => path)).toEqual(['src/server.ts'])
})

test('what runs before anything is installed imports Node alone', () => {
  const early = sources(
    'scripts/prepare.js',
    'scripts/steps.js',
    'scripts/postgresql.js',
    'scripts/driver.js',
    'scripts/audit.js',
    'scripts/test.js',
  )
  expect(breaches(early, (name) => /^node:|^scripts\/(steps|driver|postgresql|audit)\.js$/.test(name))).toEqual([])
})

describe('this reader of imports', () => {
  test('sees every form of import', () => {
    const forms = [
      "import { a } from 'one'",
      "import type { b } from 'two'",
      "import\n  c,\n  { d }\nfrom 'three'",
      "export * from 'four'",
      "import 'five'",
      "const e = await import('six')",
      "new Worker(new URL('./seven.ts', import.meta.url))",
    ]
    expect(importsOf(forms.join('\n'))).toEqual(['one', 'two', 'three', 'four', 'five', 'six', './seven.ts'])
  })

  test('takes a call for a call and a word for a word', () => {
    expect(withoutProse("// no Date here\n/* nor Date */ const text = 'a Date'")).not.toMatch(/Date/)
    expect(withoutProse('const now = new Date() // when')).toMatch(/Date/)
  })
})
