import { spawnSync } from 'node:child_process'
import { chmodSync, cpSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
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

const node = (folder: string, ...args: string[]) =>
  spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8', env: { ...process.env, NODE_OPTIONS: '' } })

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
    files?: { status: string; assertionResults: { status: string }[] }[]
  }
  const good = { status: 'passed', assertionResults: [{ status: 'passed' }, { status: 'passed' }] }

  /** Runs scripts/test.js with tools that end as told. */
  function lastLine({ biome = 0, tsc = 0, vitest = 0, files }: Outcome) {
    const folder = emptyProject()
    const bin = (name: string, text: string) => write(folder, `node_modules/.bin/${name}`, `#!/bin/sh\n${text}\n`, true)
    bin('biome', `exit ${biome}`)
    bin('tsc', `exit ${tsc}`)
    const results = JSON.stringify({ testResults: files })
    const writing = files ? `mkdir -p dist; echo '${results}' > dist/test-results.json; ` : ''
    bin('vitest', `${writing}exit ${vitest}`)
    const { status, stdout } = node(folder, 'scripts/test.js')
    return [status, stdout.trimEnd().split('\n').at(-1)]
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
})
