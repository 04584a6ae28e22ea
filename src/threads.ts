import { setTimeout } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import type { Worker } from 'node:worker_threads'
import { Piscina } from 'piscina'

export interface ThreadsOptions {
  /** What the threads run, from `threadFile`. */
  file: string
  /** As many at once. */
  most: number
  /** Memory of each for objects (MB); by default as much as the engine gives. */
  heap?: number
}

/** How long a stop waits for a thread that loads (ms). */
const longestLoad = 5000

/** How a task is asked for. */
export interface Ask {
  /** Which of the file's functions. */
  name: string
  /** Ends the task, and the thread with it if it has begun. */
  signal?: AbortSignal
}

/** The thread ended over a task, which may have been done in part or as a whole, or before it could begin with it. */
export class ThreadDied extends Error {
  /** Otherwise nothing of what was asked was done. */
  readonly begun: boolean
  /** It wanted more memory than it may have. */
  readonly outOfMemory: boolean
  constructor(cause?: unknown) {
    super('The thread that worked at this has ended', { cause })
    this.name = 'ThreadDied'
    this.begun = cause !== undefined
    this.outOfMemory = (cause as { code?: string } | undefined)?.code === 'ERR_WORKER_OUT_OF_MEMORY'
  }
}

/** A thread's file: beside its asker when run from the sources, beside the server when built. @param from `import.meta.url` */
export function threadFile(from: string, built: string): string {
  return fileURLToPath(new URL(from.endsWith('.ts') ? './fromSources.js' : built, from))
}

/**
 * Threads for one kind of work, started when there is some. Each task is answered: by its result, by what it threw, or, when its
 * thread ends, by ThreadDied. The pool behind it starts a thread only where a task comes in; what waits while the last one
 * dies would wait for that.
 */
export class Threads {
  readonly #pool: Piscina
  readonly #asked = new Set<AbortController>()
  /** Those that have loaded what they run. */
  readonly #ready = new WeakSet<Worker>()

  constructor({ file, most, heap }: ThreadsOptions) {
    this.#pool = new Piscina({
      filename: file,
      execArgv: [],
      // None before the first task: a thread that is ended while it still loads can take the whole process along.
      minThreads: 0,
      maxThreads: most,
      idleTimeout: 30_000,
      ...(heap !== undefined && { resourceLimits: { maxOldGenerationSizeMb: heap } }),
    })
    // A thread that dies fails what it was asked; without a listener it would end the server.
    this.#pool.on('error', () => {})
    this.#pool.on('workerCreate', ({ id }: { id: number }) => {
      const thread = this.#pool.threads.find(({ threadId }) => threadId === id)
      if (thread) this.#ready.add(thread)
    })
    this.#pool.on('workerDestroy', () => setImmediate(() => this.#giveUpWaiting()))
  }

  /** Whether there is one now. */
  get alive(): boolean {
    return this.#pool.threads.length > 0
  }

  async run<Answer>(request: unknown, ask: Ask): Promise<Answer> {
    try {
      return await this.#once<Answer>(request, ask)
    } catch (error) {
      if (!(error instanceof ThreadDied) || error.begun) throw error
    }
    // It waited behind what killed the thread. Where no thread can start at all, once more is enough.
    return this.#once(request, ask)
  }

  async #once<Answer>(request: unknown, { name, signal }: Ask): Promise<Answer> {
    const own = new AbortController()
    this.#asked.add(own)
    try {
      return await this.#pool.run(request, {
        name,
        signal: signal ? AbortSignal.any([own.signal, signal]) : own.signal,
      })
    } catch (error) {
      throw own.signal.aborted && !signal?.aborted ? new ThreadDied() : hasDied(error) ? new ThreadDied(error) : error
    } finally {
      this.#asked.delete(own)
    }
  }

  /** With no thread left, all that was asked and is not answered waits. */
  #giveUpWaiting(): void {
    if (this.alive || this.#pool.queueSize === 0) return
    for (const each of this.#asked) each.abort()
  }

  /** Ends all threads, and with them what they are asked. One that loads is let load: ended, it can take the whole process along. */
  async close(): Promise<void> {
    const loading = this.#pool.threads.filter((thread) => !this.#ready.has(thread))
    const loaded = loading.map(
      (thread) =>
        new Promise<void>((resolve) => {
          // The first thing that it says is that it has.
          thread.once('message', () => resolve()).once('exit', () => resolve())
        }),
    )
    await Promise.race([Promise.all(loaded), setTimeout(longestLoad, undefined, { ref: false })])
    await this.#pool.destroy()
  }
}

function hasDied(error: unknown): boolean {
  const { code, message } = error as { code?: string; message?: string }
  return code === 'ERR_WORKER_OUT_OF_MEMORY' || /^worker exited with code/.test(message ?? '')
}
