import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { build } from 'esbuild'
import { expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { openStore } from '../../src/store/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import { scratchFolder } from './scratch.ts'

/** The delays of ten lie at most 22 ms apart, from 22 to 185 ms after the first answer; more of them find what happens seldom. */
const rounds = inLongForm ? 25 : 10

/** From the first acknowledgement to the kill (ms): another part of the work in each round. */
const delay = (round: number) => (37 * round) % 200

/** The writer, made ready once: compiling it for each round took most of the test's time. */
async function builtWriter(): Promise<string> {
  // Inside the project, where its packages are found.
  const outfile = join(projectRoot(), 'test-results', 'crash.writer.js')
  await build({
    entryPoints: [join(import.meta.dirname, 'crash.writer.ts')],
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    outfile,
  })
  return outfile
}

/** Starts the writer, kills it by `kill -9` some time after its first acknowledgement, and returns what it printed. */
async function killedWriter(script: string, url: string, round: number): Promise<string> {
  const child = spawn(process.execPath, [script, url, String(round)], {
    cwd: projectRoot(),
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let printed = ''
  child.stdout.on('data', (chunk) => {
    printed += chunk
  })
  await once(child.stdout, 'data')
  await new Promise((resolve) => setTimeout(resolve, delay(round)))
  child.kill('SIGKILL')
  await once(child, 'close')
  return printed
}

/** The newest revision of each document among the whole lines. */
function acknowledged(printed: string): Map<string, number> {
  const whole = printed.slice(0, printed.lastIndexOf('\n')).split('\n')
  return new Map(whole.map((line) => [line.split(' ')[0]!, Number(line.split(' ')[1])]))
}

test('a writer killed in the middle of its work loses nothing that was acknowledged and leaves nothing half saved', async () => {
  const file = join(scratchFolder(), 'team.db')
  const script = await builtWriter()
  const newest = new Map<string, number>()
  for (let round = 1; round <= rounds; round++) {
    for (const [id, revision] of acknowledged(await killedWriter(script, `file:${file}`, round)))
      newest.set(id, revision)
    const store = await openStore(`file:${file}`)
    const team = store.workspace(await store.ensureWorkspace('team'))
    for (const [id, revision] of newest) {
      const kept = (await team.revisions('game', id)).map((entry) => entry.revision)
      // Every revision from the first to at least the acknowledged one, without a gap.
      expect(kept).toEqual(Array.from({ length: kept.length }, (_, index) => kept.length - index))
      expect(kept.length).toBeGreaterThanOrEqual(revision)
      const document = await team.get('game', id)
      expect(document?.revision).toBe(kept.length)
      expect(document?.body).toMatchObject({ end: true })
    }
    await store.close()
  }
  expect([...newest.values()].reduce((sum, revision) => sum + revision, 0)).toBeGreaterThan(rounds)
  const database = new Database(file)
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
  expect(database.pragma('foreign_key_check')).toEqual([])
  expect(database.prepare('SELECT count(*) AS bad FROM Revision WHERE NOT json_valid(body)').get()).toEqual({ bad: 0 })
  database.close()
}, 240_000)
