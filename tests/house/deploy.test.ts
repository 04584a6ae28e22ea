import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import description from '../../package.json' with { type: 'json' }
import { made } from '../../scripts/steps.js'
import { readConfig } from '../../src/config.ts'
import { projectRoot } from '../../src/root.ts'

const read = (path: string) => readFileSync(join(projectRoot(), path), 'utf8')
const exists = (path: string) => existsSync(join(projectRoot(), path))

/** What scripts/bundle.js leaves in dist, by its own words. */
const bundled = (): string[] => {
  const names = /commands = \[([^\]]+)\]/.exec(read('scripts/bundle.js'))![1]!
  return ['server', ...[...names.matchAll(/'(\w+)'/g)].map(([, name]) => name!)].map((name) => `dist/${name}.js`)
}

describe('deploy/Containerfile', () => {
  const lines = read('deploy/Containerfile')
    .replaceAll(/\\\n/g, ' ')
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map((line) => /^([A-Z]+)\s+(.*)$/.exec(line))
  const all = lines.map((line) => ({ instruction: line?.[1], words: line?.[2] ?? '' }))
  const of = (instruction: string) => all.filter((each) => each.instruction === instruction).map(({ words }) => words)
  const list = (text: string): string[] => JSON.parse(text)

  test('has instructions that there are, and runs as no administrator', () => {
    const known = 'FROM RUN COPY WORKDIR ENV USER VOLUME EXPOSE STOPSIGNAL HEALTHCHECK CMD'.split(' ')
    expect(all.filter(({ instruction }) => !known.includes(instruction ?? ''))).toEqual([])
    expect(of('USER')).toEqual(['node'])
    expect(of('STOPSIGNAL')).toEqual(['SIGTERM'])
  })

  const fromHere = of('COPY').filter((words) => !words.startsWith('--from='))
  const copied = fromHere.flatMap((words) => words.split(' ').slice(0, -1))

  test('copies what is there, what is not kept out, and all that the steps need', () => {
    expect(copied.filter((path) => !exists(path))).toEqual([])
    const ignored = read('.containerignore').trim().split('\n')
    expect(copied.filter((path) => ignored.includes(path))).toEqual([])
    const needed = Object.values(made).flatMap(({ inputs }) => inputs)
    const isCopied = (path: string) => copied.some((each) => path === each || path.startsWith(`${each}/`))
    expect(needed.filter((path) => !isCopied(path))).toEqual([])
  })

  test('takes from the first part what the server reads, and nothing that is not made there', () => {
    const second = of('COPY').flatMap((words) => /^--from=made \/opt\/cyclewright\/(\S+)/.exec(words)?.[1] ?? [])
    expect(second.sort()).toEqual(['dist', 'node_modules', 'package.json', 'prisma'])
  })

  test('builds on a version of Node that the program is for', () => {
    const least = Number(/\d+/.exec(description.engines.node)![0])
    for (const words of of('FROM')) expect(Number(/\/node:(\d+)-/.exec(words)?.[1])).toBeGreaterThanOrEqual(least)
  })

  test('sets what the server reads, and starts what the bundle has', () => {
    const settings = Object.fromEntries(of('ENV').flatMap((words) => words.split(' ').map((each) => each.split('='))))
    const { NODE_ENV, ...ours } = settings
    expect([NODE_ENV, readConfig(ours)]).toMatchObject([
      'production',
      { host: '0.0.0.0', databaseUrl: 'file:/data/cyclewright.db' },
    ])
    expect(Object.keys(ours).filter((name) => !read('src/config.ts').includes(`${name}: z`))).toEqual([])
    const [command = '[]'] = of('CMD')
    expect(bundled()).toContain(list(command).at(-1))
    expect(`npm start: ${list(command).join(' ')}`).toBe(`npm start: ${description.scripts.start}`)
    expect(of('EXPOSE')).toEqual([String(readConfig({}).port)])
  })

  test('asks a health check that can be run', () => {
    const [check = ''] = of('HEALTHCHECK')
    const [program, flag, script] = list(/CMD (.*)$/.exec(check)![1]!)
    expect([program, flag]).toEqual(['node', '-e'])
    // Nobody listens on port 9 here: it ends with 1, and not by a fault in what it says.
    const { status, stderr } = spawnSync(process.execPath, ['-e', script!.replace(':3000', ':9')], { encoding: 'utf8' })
    expect([status, stderr]).toEqual([1, ''])
  })
})

describe('deploy/cyclewright.service', () => {
  const unit = 'deploy/cyclewright.service'
  const entries = read(unit)
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#') && !line.startsWith('['))
    .map((line) => [line.slice(0, line.indexOf('=')), line.slice(line.indexOf('=') + 1)] as const)
  const of = (name: string) => entries.flatMap(([key, value]) => (key === name ? [value] : []))

  test('starts the server as npm does, with a database where it may write', () => {
    expect(of('ExecStart')[0]!.replace('/usr/bin/', '').replace('/opt/cyclewright/', '')).toBe(
      description.scripts.start,
    )
    const [name, url] = of('Environment')[0]!.split(/=(.*)/)
    expect([name, readConfig({ DATABASE_URL: url }).databaseUrl]).toEqual([
      'DATABASE_URL',
      `file:/var/lib/${of('StateDirectory')[0]}/cyclewright.db`,
    ])
    // Longer than the server waits for requests under way and for its threads.
    expect(Number(of('TimeoutStopSec')[0])).toBeGreaterThan(10)
  })

  test.runIf(existsSync('/usr/bin/systemd-analyze'))('is a unit that systemd takes, and little exposed', () => {
    const verified = spawnSync('systemd-analyze', ['verify', join(projectRoot(), unit)], { encoding: 'utf8' })
    // Whether the program is installed on this machine is another matter.
    const said = verified.stderr
      .split('\n')
      .filter((line) => line !== '' && !/is not executable|Failed to (connect|get)/.test(line))
    expect(said).toEqual([])
    const args = ['security', '--offline=true', '--no-pager', join(projectRoot(), unit)]
    const { stdout } = spawnSync('systemd-analyze', args, { encoding: 'utf8' })
    expect(Number(/Overall exposure level for \S+: ([\d.]+)/.exec(stdout)?.[1])).toBeLessThan(2.5)
  })
})

test('docs/operations.md names commands and addresses that there are', () => {
  const text = read('docs/operations.md')
  const commands = [...text.matchAll(/`?(dist\/\w+\.js)/g)].map(([, path]) => path!)
  expect(commands.length).toBeGreaterThan(3)
  expect(commands.filter((path) => !bundled().includes(path))).toEqual([])
  const npm = [...text.matchAll(/npm run (\w+)/g)].map(([, name]) => name!)
  expect(npm.filter((name) => !(name in description.scripts))).toEqual([])
  const settings = [...text.matchAll(/`([A-Z]+_[A-Z]+)`/g)].map(([, name]) => name!)
  expect(settings.filter((name) => !read('src/config.ts').includes(`${name}: z`))).toEqual([])
})
