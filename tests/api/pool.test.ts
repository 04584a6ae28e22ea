import { afterEach, describe, expect, test } from 'vitest'

import { MemoryWatch } from '../../src/api/compute/memory.ts'
import { Queue } from '../../src/api/compute/queue.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'

let server: Server | undefined

afterEach(async () => {
  await server?.close()
  server = undefined
})

/** A comparison that keeps a thread busy for many seconds. */
function long() {
  const game = harbour()
  game.clock.teleop = 150
  const option = ternBest()
  option.robot.carries['buoy'] = 8
  option.robot.form.spread = 1.2
  const options = Array.from({ length: 8 }, (_, index) => ({ ...option, id: `option-${index}` }))
  const inputs = options.map((_, index) => ({
    id: `input ${index}`,
    paths: [`/options/${index}/robot/score/pier/0/success`],
    as: 'value',
    low: 0.5,
    likely: 0.8,
    high: 1,
  }))
  return { game, options, inputs, belief: { seed: 1 } }
}

const small = () => ({ game: harbour(), robot: ternBest().robot, from: 'left', to: 'slip.1' })
const seconds = {
  travel: 10,
  leg: 10,
  plan: 10,
  planPart: 10,
  worth: 10,
  timing: 10,
  airPlan: 10,
  sweep: 10,
  matches: 20,
  stated: 20,
  candidates: 20,
  lineups: 30,
  calibrations: 20,
  film: 20,
  estimates: 20,
  estimatesOfTeams: 20,
  changed: 20,
  halfLives: 20,
  made: 20,
  earlierChanges: 20,
  sideBySide: 20,
  observed: 20,
  versions: 20,
  lanes: 20,
  decision: 20,
  seedLots: 20,
  seeds: 20,
  pickOrder: 20,
  ratings: 20,
  doubts: 20,
  solved: 20,
  estimateReport: 20,
  field: 20,
  season: 20,
  summary: 10,
}

describe('A computation beyond its time', () => {
  test('is stopped and answered with 422 and a sentence, and the thread works on', async () => {
    server = await startServer({ pool: { threads: 1, budgets: { ...seconds, compare: 1, draws: 1 } } })
    await server.send('POST', '/api/compute/travel', small())
    const began = performance.now()
    const { status, body } = await server.send('POST', '/api/compute/compare', long())
    expect(performance.now() - began).toBeLessThan(10_000)
    expect(status).toBe(422)
    expect(body.error).toMatchObject({ code: 'overBudget', message: expect.stringContaining('more than 1 s') })
    expect((await server.send('POST', '/api/compute/travel', small())).status).toBe(200)
  })
})

describe('While threads are at work', () => {
  test('the server answers everything else, and too many questions with 503 and when to come back', async () => {
    server = await startServer({ pool: { threads: 1, waiting: 1, budgets: { ...seconds, compare: 6, draws: 6 } } })
    const { url } = server
    await server.send('POST', '/api/compute/travel', small())
    const working = server.send('POST', '/api/compute/compare', long())
    await until(async () => (await fetch(`${url}/health`)).ok)
    const waiting = server.send('POST', '/api/compute/travel', small())
    await new Promise((resolve) => setTimeout(resolve, 300))

    const began = performance.now()
    expect((await server.get('/health')).status).toBe(200)
    expect(performance.now() - began).toBeLessThan(2000)

    const refused = await server.send('POST', '/api/compute/travel', small())
    expect(refused.status).toBe(503)
    expect(refused.headers.get('retry-after')).toBe('5')
    expect(refused.body.error.code).toBe('busy')

    expect((await working).status).toBe(422)
    expect((await waiting).status).toBe(200)
  })

  test('a question whose asker has gone makes room at once', async () => {
    server = await startServer({ pool: { threads: 1, budgets: { ...seconds, compare: 60, draws: 60 } } })
    await server.send('POST', '/api/compute/travel', small())
    const gone = new AbortController()
    const init = { method: 'POST', body: JSON.stringify(long()), headers: { 'content-type': 'application/json' } }
    const asked = fetch(`${server.url}/api/compute/compare`, { ...init, signal: gone.signal }).catch(() => 'gone')
    await new Promise((resolve) => setTimeout(resolve, 500))
    gone.abort()
    expect(await asked).toBe('gone')
    const began = performance.now()
    expect((await server.send('POST', '/api/compute/travel', small())).status).toBe(200)
    expect(performance.now() - began).toBeLessThan(20_000)
  })
})

test('A fault of the server says nothing of its inside', async () => {
  server = await startServer()
  await server.database.sql('DROP TABLE "Revision"; DROP TABLE "Document"')
  const { status, body } = await server.get('/api/documents/game')
  expect(status).toBe(500)
  expect(body).toEqual({
    error: {
      code: 'internal',
      message: 'Something went wrong in the server. Nothing was saved; the server’s log says more',
    },
  })
})

test('Computations are stopped when memory grows by more than they may have, and only then', async () => {
  const memory = new MemoryWatch({ most: 60e6, interval: 10 })
  const first = memory.watch()
  const small = Buffer.alloc(5e6, 1)
  await new Promise((resolve) => setTimeout(resolve, 100))
  expect(first.signal.aborted).toBe(false)
  const large = Buffer.alloc(150e6, 1)
  await until(async () => first.signal.aborted)
  first.done()
  const second = memory.watch()
  await new Promise((resolve) => setTimeout(resolve, 100))
  expect(second.signal.aborted).toBe(false)
  second.done()
  expect(small.length + large.length).toBe(155e6)
})

describe('The queue', () => {
  const never = new AbortController().signal

  test('lets so many work at once, the next in the order in which they came', async () => {
    const queue = new Queue({ working: 2, waiting: 10, seconds: 10 })
    const order: number[] = []
    let most = 0
    let now = 0
    const work = (index: number) => () => {
      now += 1
      most = Math.max(most, now)
      order.push(index)
      return new Promise<void>((resolve) =>
        setTimeout(() => {
          now -= 1
          resolve()
        }, 10),
      )
    }
    await Promise.all([0, 1, 2, 3, 4, 5].map((index) => queue.run(work(index), never)))
    expect(most).toBe(2)
    expect(order).toEqual([0, 1, 2, 3, 4, 5])
  })

  test('frees its place when work fails', async () => {
    const queue = new Queue({ working: 1, waiting: 0, seconds: 10 })
    await expect(queue.run(() => Promise.reject(new Error('no')), never)).rejects.toThrow('no')
    await expect(queue.run(async () => 'yes', never)).resolves.toBe('yes')
  })

  test('does not keep anyone longer than it says, nor who has gone', async () => {
    const queue = new Queue({ working: 1, waiting: 5, seconds: 0.05 })
    let end = () => {}
    const first = queue.run(
      () =>
        new Promise<void>((resolve) => {
          end = resolve
        }),
      never,
    )
    await expect(queue.run(async () => 'late', never)).rejects.toThrow('as much as it can')
    const gone = new AbortController()
    const left = queue.run(async () => 'left', gone.signal)
    gone.abort()
    await expect(left).rejects.toThrow()
    end()
    await first
    await expect(queue.run(async () => 'free', never)).resolves.toBe('free')
  })
})

async function until(condition: () => Promise<boolean>): Promise<void> {
  while (!(await condition())) await new Promise((resolve) => setTimeout(resolve, 50))
}
