import { spawnSync } from 'node:child_process'
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, dirname, join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'

/** A folder with the project's scripts and nothing else; they take it for the project. */
function emptyProject(): string {
  const folder = mkdtempSync(join(tmpdir(), 'scripts-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  cpSync(join(projectRoot(), 'scripts'), join(folder, 'scripts'), { recursive: true })
  write(folder, 'package.json', '{ "type": "module" }')
  return folder
}

function write(folder: string, path: string, text: string, executable = false) {
  mkdirSync(join(folder, path, '..'), { recursive: true })
  writeFileSync(join(folder, path), text)
  if (executable) chmodSync(join(folder, path), 0o755)
}

/** Runs Node in the folder; what lies in its `commands` goes before the commands of the machine. */
const node = (folder: string, ...args: string[]) =>
  spawnSync(process.execPath, args, {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NODE_OPTIONS: '', PATH: join(folder, 'commands') + delimiter + process.env['PATH'] },
  })

/** Evaluates an expression over what scripts/steps.js exports. */
function ask(folder: string, expression: string): unknown {
  const program = `const steps = await import('./scripts/steps.js'); console.log(JSON.stringify(${expression}))`
  return JSON.parse(node(folder, '--input-type=module', '-e', program).stdout)
}

describe('whether the dependencies must be installed', () => {
  const lockOf = (packages: object) => JSON.stringify({ packages })
  const one = { '': { version: '1.0.0' }, 'node_modules/one': { version: '1.2.0' } }

  function project(lock: object, installed: object | null) {
    const folder = emptyProject()
    const hidden = join('node_modules', '.package-lock.json')
    if (installed) write(folder, hidden, lockOf(installed))
    // Older than the lock, as after `git pull`.
    if (installed) utimesSync(join(folder, hidden), 1, 1)
    write(folder, 'package-lock.json', lockOf(lock))
    return ask(folder, 'steps.dependenciesAreCurrent()')
  }

  test('yes on a fresh clone', () => expect(project(one, null)).toBe(false))
  test('yes where the lock names another version', () =>
    expect(project(one, { 'node_modules/one': { version: '1.1.0' } })).toBe(false))
  test('yes where a package is missing', () => expect(project(one, {})).toBe(false))
  test('yes where one is left over', () =>
    expect(project(one, { ...one, 'node_modules/two': { version: '1.0.0' } })).toBe(false))
  test('no where both say the same, though the lock is newer', () =>
    expect(project(one, { 'node_modules/one': { version: '1.2.0' } })).toBe(true))
  test('no where only what another platform needs is missing', () =>
    expect(project({ ...one, 'node_modules/other': { version: '1.0.0', optional: true } }, one)).toBe(true))
})

describe('whether a step must be done again', () => {
  const stale = (folder: string) =>
    ask(folder, `steps.isStale({ name: 'step', inputs: ['in', 'one.txt'], output: 'out.txt' })`)

  function madeProject() {
    const folder = emptyProject()
    write(folder, 'in/deep/a.txt', 'a')
    write(folder, 'one.txt', '1')
    write(folder, 'out.txt', 'made')
    ask(folder, `steps.leaveStamp('step', steps.fingerprint(['in', 'one.txt'])) ?? null`)
    return folder
  }

  test('no where nothing has changed', () => expect(stale(madeProject())).toBe(false))
  test('yes where an input has other contents of the same length', () => {
    const folder = madeProject()
    write(folder, 'in/deep/a.txt', 'b')
    expect(stale(folder)).toBe(true)
  })
  test('yes where an input is new, renamed or gone', () => {
    const folder = madeProject()
    write(folder, 'in/b.txt', '')
    expect(stale(folder)).toBe(true)
    rmSync(join(folder, 'in/b.txt'))
    expect(stale(folder)).toBe(false)
    rmSync(join(folder, 'one.txt'))
    expect(stale(folder)).toBe(true)
  })
  test('yes where the output is gone', () => {
    const folder = madeProject()
    rmSync(join(folder, 'out.txt'))
    expect(stale(folder)).toBe(true)
  })
})

describe('the last line of `npm test`', () => {
  interface Outcome {
    biome?: number
    tsc?: number
    vitest?: number
    /** Whether the database driver must be made first, and whether it can be. */
    driver?: 'there' | 'made' | 'refused'
    files?: { status: string; assertionResults: { status: string }[] }[]
  }
  const good = { status: 'passed', assertionResults: [{ status: 'passed' }, { status: 'passed' }] }

  /** Runs scripts/test.js with tools that end as told; `asked` is what the runner of tests was called with, a line each time. */
  function outcome({ biome = 0, tsc = 0, vitest = 0, driver = 'there', files }: Outcome) {
    const folder = emptyProject()
    const module = join(folder, 'node_modules/better-sqlite3/index.js')
    const text = 'module.exports = class { close() {} }'
    if (driver === 'there') write(folder, 'node_modules/better-sqlite3/index.js', text)
    else write(folder, 'tests/store/one.test.ts', '')
    const npm = driver === 'made' ? `mkdir -p ${dirname(module)}; sleep 1; echo '${text}' > ${module}` : 'exit 1'
    write(folder, 'commands/npm', `#!/bin/sh\n${npm}\n`, true)
    const bin = (name: string, text: string) => write(folder, `node_modules/.bin/${name}`, `#!/bin/sh\n${text}\n`, true)
    bin('biome', `exit ${biome}`)
    bin('tsc', `exit ${tsc}`)
    const results = JSON.stringify({ testResults: files })
    const writing = files ? `mkdir -p dist; echo '${results}' > dist/test-results.json; ` : ''
    bin('vitest', `echo "$@" >> asked; ${writing}exit ${vitest}`)
    const { status, stdout } = node(folder, 'scripts/test.js')
    const calls = join(folder, 'asked')
    const asked = existsSync(calls) ? readFileSync(calls, 'utf8').trim().split('\n') : []
    return { status, last: stdout.trimEnd().split('\n').at(-1), stdout, asked }
  }
  function lastLine(told: Outcome) {
    const { status, last } = outcome(told)
    return [status, last]
  }

  test('counts the tests and the two checks', () => {
    expect(lastLine({ files: [good, good] })).toEqual([0, '6 passed, 0 failed'])
  })
  test('counts a failed test', () => {
    const bad = { status: 'failed', assertionResults: [{ status: 'passed' }, { status: 'failed' }] }
    expect(lastLine({ vitest: 1, files: [good, bad] })).toEqual([1, '5 passed, 1 failed'])
  })
  test('counts a file that broke while it was loaded', () => {
    expect(lastLine({ vitest: 1, files: [good, { status: 'failed', assertionResults: [] }] })).toEqual([
      1,
      '4 passed, 1 failed',
    ])
  })
  test('counts wrong types and wrong format as failures', () => {
    expect(lastLine({ biome: 1, tsc: 2, files: [good] })).toEqual([1, '2 passed, 2 failed'])
  })
  test('is a failure when the runner broke without a result, or after good ones', () => {
    expect(lastLine({ vitest: 1 })).toEqual([1, '2 passed, 1 failed'])
    expect(lastLine({ vitest: 1, files: [good] })).toEqual([1, '4 passed, 1 failed'])
  })
  test('counts both halves where the driver is compiled beside the first', () => {
    const { status, last, asked } = outcome({ driver: 'made', files: [good] })
    expect([status, last]).toEqual([0, '6 passed, 0 failed'])
    expect(asked.map((line) => line.split(' ').filter((word) => word.startsWith('tests/')))).toEqual([
      ['tests/model', 'tests/theory'],
      ['tests/store'],
    ])
  })
  test('counts a driver that can not be made as a failure, and says what is missing', () => {
    const { status, last, asked, stdout } = outcome({ driver: 'refused', files: [good] })
    expect([status, last]).toEqual([1, '4 passed, 1 failed'])
    expect(asked).toHaveLength(1)
    expect(stdout).toContain('The database driver better-sqlite3 could ')
  })
})
