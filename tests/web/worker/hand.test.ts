import { Worker } from 'node:worker_threads'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { budgets } from '../../../web/worker/budgets.ts'
import { failureOf } from '../../../web/worker/failure.ts'
import { Hand, type WorkerLike } from '../../../web/worker/hand.ts'
import type { ToWorker } from '../../../web/worker/protocol.ts'

/** Threads that were started, all of them real ones. */
let started: Worker[] = []
let hand: Hand

function start(): WorkerLike {
  const thread = new Worker(new URL('./thread.js', import.meta.url))
  started.push(thread)
  return {
    postMessage: (question) => thread.postMessage(question),
    terminate: () => void thread.terminate(),
    addEventListener: (type: 'message' | 'error', listener: (event: never) => void) => {
      const event = (data: unknown) =>
        (type === 'message' ? { data } : { message: String(data), preventDefault: () => {} }) as never
      thread.on(type, (data: unknown) => listener(event(data)))
    },
  }
}

beforeEach(() => {
  started = []
  hand = new Hand(start, { ...budgets, travel: 1 })
})

afterEach(() => hand.end(new Error('The test is over.')))

let number = 0
/** The thread does as `from` says; what comes back is an answer, or the failure's code and sentence. */
const ask = (from: 'answer' | 'slow' | 'hang' | 'break' | 'fill' | 'refuse'): Promise<unknown> =>
  new Promise<unknown>((resolve, reject) => {
    const question = { id: ++number, kind: 'travel', from } as unknown as ToWorker
    hand.send(question, { resolve, reject })
  }).then(
    (answer) => (answer === undefined ? 'nothing' : 'answered'),
    (error) => error.failure ?? error,
  )

describe('a worker with its open questions', () => {
  test('stops what takes longer than its budget with a sentence, and asks anew what waited behind', async () => {
    const [first, hung, behind] = [ask('answer'), ask('hang'), ask('answer')]
    expect(await first).toBe('answered')
    expect(await hung).toMatchObject({
      code: 'overBudget',
      message: expect.stringMatching(/take too long and was stopped after 1 s; carrying fewer pieces .* smaller\.$/),
    })
    expect(await behind).toBe('answered')
    expect(started).toHaveLength(2)
  })

  test('counts each question’s own time, not the time that it waited', async () => {
    const [one, two, last] = [ask('hang'), ask('hang'), ask('answer')]
    expect(await one).toMatchObject({ code: 'overBudget' })
    const between = performance.now()
    expect(await two).toMatchObject({ code: 'overBudget' })
    expect(performance.now() - between).toBeGreaterThan(900)
    expect(await last).toBe('answered')
  })

  test('takes a machine that stood still for no time that the question took', async () => {
    expect(await ask('answer')).toBe('answered')
    const asked = ask('slow')
    // The thread goes on meanwhile, and is done 1.6 s after it was asked: later than its budget.
    setTimeout(() => {
      const until = performance.now() + 1300
      while (performance.now() < until);
    })
    expect(await asked).toBe('answered')
    expect(started).toHaveLength(1)
  })

  test('is renewed when its memory is full or when it breaks, and goes on', async () => {
    const [full, after] = [ask('fill'), ask('answer')]
    expect(await full).toMatchObject({ code: 'overBudget', message: expect.stringContaining('more memory') })
    expect(await after).toBe('answered')
    const [broken, last] = [ask('break'), ask('answer')]
    expect(await broken).toMatchObject({ code: 'unexpected', message: expect.stringContaining('The thread broke.') })
    expect(await last).toBe('answered')
    expect(started).toHaveLength(3)
  })

  test('stays where it only refused a document', async () => {
    expect(await ask('refuse')).toEqual({ code: 'invalid', message: 'pace must be at least 1, got 0' })
    expect(await ask('answer')).toBe('answered')
    expect(started).toHaveLength(1)
  })

  test('that is ended rejects what is open, and starts again when it is asked again', async () => {
    const open = ask('hang')
    hand.end(new Error('Stopped'))
    expect(await open).toMatchObject({ message: 'Stopped' })
    expect(await ask('answer')).toBe('answered')
  })
})

test('a table that the engine refuses is told apart from an error of ours', () => {
  const refused = (make: () => unknown) => {
    try {
      make()
    } catch (error) {
      return failureOf(error).code
    }
    return 'made'
  }
  expect(refused(() => new Float64Array(2 ** 52))).toBe('outOfMemory')
  expect(refused(() => new ArrayBuffer(2 ** 45))).toBe('outOfMemory')
  expect(refused(() => (12).toFixed(200))).toBe('unexpected')
})
