import { availableParallelism } from 'node:os'
import { ModelError } from '../../model/errors.ts'
import { ThreadDied, Threads, threadFile } from '../../threads.ts'
import { ApiError } from '../errors.ts'
import type { Outcome } from './compute.worker.ts'
import { MemoryWatch } from './memory.ts'
import { Queue } from './queue.ts'
import { budgets, type TaskName, type Tasks } from './tasks.ts'

export interface PoolOptions {
  /** Threads; by default one less than the machine can run at once, and at least two. */
  threads?: number
  /** Requests that may wait for a thread. */
  waiting?: number
  /** How long each task may take at most (s). */
  budgets?: { readonly [name in TaskName]: number }
  /** File of the threads: their own, unless a test brings one that breaks. */
  worker?: string
}

/** Threads that compute, so that the server stays responsive whatever it is asked. */
export interface Pool {
  readonly threads: number
  /** A thread that dies over a task is replaced, and the task is done again, once: the answer is the same. */
  run<Name extends TaskName>(
    name: Name,
    request: Tasks[Name]['request'],
    signal: AbortSignal,
  ): Promise<Tasks[Name]['answer']>
  /** The same threads for work that nobody sits and waits for: its parts wait as long as it takes. `replaced` is told of dead threads. */
  patient(replaced: () => void): Pool
  close(): Promise<void>
}

/**
 * Memory of one thread for objects (MB), far above what the watch lets all of them together have: the engine's own limit is no way to end
 * a thread, since where a single step wants much beyond it (a table of keys that doubles) it ends the whole process.
 */
const heap = 4096

export function openPool(options: PoolOptions = {}): Pool {
  const threads = options.threads ?? Math.max(2, availableParallelism() - 1)
  const limits = options.budgets ?? budgets
  const queue = new Queue({ working: threads, waiting: options.waiting ?? 32, seconds: 60 })
  const workers = new Threads({
    file: options.worker ?? threadFile(import.meta.url, './compute.worker.js'),
    most: threads,
    heap,
  })
  const memory = new MemoryWatch()
  const compute = async <Name extends TaskName>(name: Name, request: Tasks[Name]['request'], gone: AbortSignal) => {
    const limit = AbortSignal.timeout(limits[name] * 1000)
    const room = memory.watch()
    try {
      const signal = AbortSignal.any([limit, gone, room.signal])
      const outcome = await workers.run<Outcome<Tasks[Name]['answer']>>(request, { name, signal })
      if ('answer' in outcome) return outcome.answer
      const { code, message, path } = outcome.error
      throw new ModelError(code, message, path)
    } catch (error) {
      if (error instanceof ModelError) throw error
      if (gone.aborted) throw new ApiError({ code: 'busy', message: 'Nobody waits for the answer any more' })
      if (room.signal.aborted) throw overBudget('more memory than it may')
      if (limit.aborted) throw overBudget(`more than ${limits[name]} s`)
      throw error
    } finally {
      room.done()
    }
  }
  const twice = async <Name extends TaskName>(
    name: Name,
    request: Tasks[Name]['request'],
    { gone, replaced }: { gone: AbortSignal; replaced: () => void },
  ) => {
    try {
      return await compute(name, request, gone)
    } catch (error) {
      if (!(error instanceof ThreadDied)) throw error
      replaced()
    }
    try {
      return await compute(name, request, gone)
    } catch (error) {
      if (!(error instanceof ThreadDied)) throw error
      // That its memory was full counts the first time too: what the thread had kept from before is gone with it.
      throw error.outOfMemory
        ? overBudget('more memory than it may')
        : new ApiError({ code: 'internal', message: diedTwice })
    }
  }
  const pool = (how: { patient: boolean; replaced(): void }): Pool => ({
    threads,
    run: (name, request, signal) =>
      queue.run(() => twice(name, request, { gone: signal, replaced: how.replaced }), signal, how),
    patient: (replaced) => pool({ patient: true, replaced }),
    close: () => workers.close(),
  })
  return pool({ patient: false, replaced: () => {} })
}

const diedTwice =
  'A part of this computation ended the thread that worked at it, and the one that took its place; the rest was stopped'

function overBudget(what: string): ApiError {
  const message = `This computation would take ${what}, so it was stopped: try fewer spots, loads, options or measured times`
  return new ApiError({ code: 'overBudget', message })
}
