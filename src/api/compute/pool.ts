import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { ModelError } from '../../model/errors.ts'
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

/** Beside this file when run from the sources, beside the server when built. */
function workerFile(): string {
  const name = import.meta.url.endsWith('.ts') ? './fromSources.js' : './compute.worker.js'
  return fileURLToPath(new URL(name, import.meta.url))
}

/** Memory of one thread for objects (MB); the model's tables lie outside and are watched. */
const heap = 512

export function openPool(options: PoolOptions = {}): Pool {
  const threads = options.threads ?? Math.max(2, availableParallelism() - 1)
  const limits = options.budgets ?? budgets
  const queue = new Queue({ working: threads, waiting: options.waiting ?? 32, seconds: 60 })
  const workers = new Piscina({
    filename: options.worker ?? workerFile(),
    execArgv: [],
    // None before the first question: a thread that is ended while it still loads can take the whole process along.
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: 30_000,
    resourceLimits: { maxOldGenerationSizeMb: heap },
  })
  // A thread that can not start fails the request that needed it; without a listener it would end the server.
  workers.on('error', () => {})
  const memory = new MemoryWatch()
  const compute = async <Name extends TaskName>(name: Name, request: Tasks[Name]['request'], gone: AbortSignal) => {
    const limit = AbortSignal.timeout(limits[name] * 1000)
    const room = memory.watch()
    try {
      const signal = AbortSignal.any([limit, gone, room.signal])
      const outcome: Outcome<Tasks[Name]['answer']> = await workers.run(request, { name, signal })
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
      if (!hasDied(error)) throw error
      replaced()
    }
    try {
      return await compute(name, request, gone)
    } catch (error) {
      if (isOutOfMemory(error)) throw overBudget('more memory than it may')
      throw hasDied(error) ? new ApiError({ code: 'internal', message: diedTwice }) : error
    }
  }
  const pool = (how: { patient: boolean; replaced(): void }): Pool => ({
    threads,
    run: (name, request, signal) =>
      queue.run(() => twice(name, request, { gone: signal, replaced: how.replaced }), signal, how),
    patient: (replaced) => pool({ patient: true, replaced }),
    close: () => workers.destroy(),
  })
  return pool({ patient: false, replaced: () => {} })
}

const diedTwice =
  'A part of this computation ended the thread that worked at it, and the one that took its place; the rest was stopped'

function overBudget(what: string): ApiError {
  const message = `This computation would take ${what}, so it was stopped: try fewer spots, loads, options or measured times`
  return new ApiError({ code: 'overBudget', message })
}

function isOutOfMemory(error: unknown): boolean {
  return (error as { code?: string }).code === 'ERR_WORKER_OUT_OF_MEMORY'
}

/** Whether the thread ended over its task. That its memory was full counts too: what it had kept from before is gone with it. */
function hasDied(error: unknown): boolean {
  return isOutOfMemory(error) || /^worker exited with code/.test((error as Error).message)
}
