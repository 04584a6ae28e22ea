import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Worker } from 'node:worker_threads'
import { afterEach, expect, onTestFinished, test } from 'vitest'
import { ThreadDied, Threads } from '../src/threads.ts'
import { scratchFolder } from './store/scratch.ts'

const file = fileURLToPath(new URL('./threads.worker.js', import.meta.url))

function threads(most = 1, heap?: number): Threads {
  const threads = new Threads({ file, most, heap })
  onTestFinished(() => threads.close())
  return threads
}

afterEach(() => {
  delete process.env['ENDS_AT_START']
})

const died = (asked: Promise<unknown>) =>
  asked.then(
    (answer) => `answered ${answer}`,
    (error: unknown) => (error instanceof ThreadDied ? error : Promise.reject(error)),
  )

test('a thread that ends itself answers for its task by its death, and another one does what waited', async () => {
  const one = threads()
  const first = died(one.run('', { name: 'exits' }))
  const second = one.run('waited', { name: 'echo' })
  expect(await first).toMatchObject({ begun: true, outOfMemory: false })
  expect(await second).toBe('waited')
})

test('so does one that is ended from outside', async () => {
  const one = threads()
  const started = new Promise<Worker>((resolve) => process.once('worker', resolve))
  const mark = join(scratchFolder(), 'mark')
  const first = died(one.run(mark, { name: 'begins' }))
  const second = one.run('waited', { name: 'echo' })
  const thread = await started
  await expect.poll(() => existsSync(mark)).toBe(true)
  await thread.terminate()
  expect(await first).toMatchObject({ begun: true, outOfMemory: false })
  expect(await second).toBe('waited')
})

test('and one that wants more memory than it may have', async () => {
  const one = threads(1, 16)
  const first = died(one.run('', { name: 'grows' }))
  const second = one.run('waited', { name: 'echo' })
  expect(await first).toMatchObject({ begun: true, outOfMemory: true })
  expect(await second).toBe('waited')
})

test('a thread that ends while it starts is followed by another one; where none can start, that is said', async () => {
  const one = threads()
  process.env['ENDS_AT_START'] = join(scratchFolder(), 'mark')
  expect(await Promise.all([one.run('a', { name: 'echo' }), one.run('b', { name: 'echo' })])).toEqual(['a', 'b'])
  const none = threads(2)
  process.env['ENDS_AT_START'] = 'always'
  expect(await died(none.run('a', { name: 'echo' }))).toMatchObject({ begun: false })
})

test('what a task throws is its own business, and who goes away ends it', async () => {
  const one = threads()
  await expect(one.run('', { name: 'throws' })).rejects.toThrow('of its own')
  const asker = new AbortController()
  const asked = one.run(join(scratchFolder(), 'mark'), { name: 'begins', signal: asker.signal })
  const waiting = one.run('waited', { name: 'echo' })
  asker.abort()
  await expect(asked).rejects.toMatchObject({ name: 'AbortError' })
  expect(await waiting).toBe('waited')
})
