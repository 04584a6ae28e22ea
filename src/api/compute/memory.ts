interface Limits {
  /** What all computations together may take beyond what the server had before them (bytes). */
  most: number
  /** How often it is looked at (ms): tables grow by some hundred megabytes in 0.1 s. */
  interval: number
}

/**
 * Stops computations whose tables grow beyond what the machine should lend them. The limit that a thread can be given
 * counts only objects, and the model's tables are plain numbers outside of it.
 */
export class MemoryWatch {
  readonly #limits: Limits
  readonly #running = new Set<AbortController>()
  #timer: NodeJS.Timeout | undefined
  #before = 0

  constructor(limits: Limits = { most: 1.2e9, interval: 100 }) {
    this.#limits = limits
  }

  /** A signal for one computation, until `done` says that it has ended. */
  watch(): { signal: AbortSignal; done(): void } {
    const controller = new AbortController()
    if (this.#running.size === 0) {
      this.#before = process.memoryUsage.rss()
      this.#timer = setInterval(() => this.#look(), this.#limits.interval)
    }
    this.#running.add(controller)
    return {
      signal: controller.signal,
      done: () => {
        this.#running.delete(controller)
        if (this.#running.size === 0) clearInterval(this.#timer)
      },
    }
  }

  /** Whose tables they are can not be told from outside, so all that run are stopped. */
  #look(): void {
    if (process.memoryUsage.rss() - this.#before < this.#limits.most) return
    for (const controller of this.#running) controller.abort()
  }
}
