import { ApiError } from '../errors.ts'

/** Lets so many work at once, so many wait, and answers the rest that it is busy. */
export class Queue {
  readonly #limits: { working: number; waiting: number; seconds: number }
  readonly #waiting = new Set<() => void>()
  readonly #patient = new Set<() => void>()
  #working = 0

  constructor(limits: { working: number; waiting: number; seconds: number }) {
    this.#limits = limits
  }

  /**
   * Runs the work when its turn comes. Throws 'busy' if there are too many before it, or its turn does not come in time.
   * Who is patient waits as long as it takes, and takes no place from those who are not.
   */
  async run<Result>(work: () => Promise<Result>, signal: AbortSignal, { patient = false } = {}): Promise<Result> {
    if (this.#working < this.#limits.working) this.#working += 1
    else await this.#turn(signal, patient)
    try {
      return await work()
    } finally {
      const [next] = this.#waiting.size > 0 ? this.#waiting : this.#patient
      if (next) next()
      else this.#working -= 1
    }
  }

  /** The place of the one that ends is handed over, so the number at work stays as it is. */
  #turn(signal: AbortSignal, patient: boolean): Promise<void> {
    const waiting = patient ? this.#patient : this.#waiting
    if (signal.aborted || (!patient && waiting.size >= this.#limits.waiting)) throw busy()
    return new Promise((resolve, reject) => {
      const leave = (settle: () => void) => () => {
        clearTimeout(timer)
        signal.removeEventListener('abort', give)
        waiting.delete(start)
        settle()
      }
      const start = leave(resolve)
      const give = leave(() => reject(busy()))
      const timer = patient ? undefined : setTimeout(give, this.#limits.seconds * 1000)
      signal.addEventListener('abort', give)
      waiting.add(start)
    })
  }
}

function busy(): ApiError {
  const message = 'The server is computing as much as it can; please ask again in a few seconds'
  return new ApiError({ code: 'busy', message, retryAfter: 5 })
}
