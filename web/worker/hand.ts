import { words } from '../words/catalogue.ts'
import { refusalWords } from '../words/problems.ts'
import { budgets } from './budgets.ts'
import { ModelFailure } from './failure.ts'
import type { Failure, FromWorker, Kind, ToWorker } from './protocol.ts'

/** A budget runs down in so many turns, so that a machine that slept, and its worker with it, has lost one of them and not all. */
const turns = 20

export interface Waiting {
  resolve(answer: unknown): void
  reject(error: Error): void
  progress?(done: number, total: number): void
}

/** What a Hand needs of a worker, which is what the browser's own has. */
export interface WorkerLike {
  postMessage(question: ToWorker): void
  addEventListener(type: 'message', listener: (event: { data: FromWorker }) => void): void
  addEventListener(type: 'error', listener: (event: { message: string; preventDefault(): void }) => void): void
  terminate(): void
}

/**
 * One worker with its open questions, which it answers in the order asked. A question that takes longer than its budget,
 * needs more memory than there is, or breaks the worker fails with a sentence; the worker is renewed and the questions
 * that waited behind are asked anew.
 */
export class Hand {
  readonly #open = new Map<number, Waiting & { question: ToWorker }>()
  readonly #start: () => WorkerLike
  readonly #budgets: { readonly [kind in Kind]: number }
  #worker: WorkerLike | null = null
  #clock: ReturnType<typeof setTimeout> | undefined

  constructor(start: () => WorkerLike, limits: { readonly [kind in Kind]: number } = budgets) {
    this.#start = start
    this.#budgets = limits
  }

  send(question: ToWorker, waiting: Waiting): void {
    this.#open.set(question.id, { ...waiting, question })
    this.#ready().postMessage(question)
    if (this.#open.size === 1) this.#wind()
  }

  /** Ends the worker at once and rejects what is open. */
  end(reason: Error): void {
    this.#drop()
    const open = [...this.#open.values()]
    this.#open.clear()
    for (const { reject } of open) reject(reason)
  }

  #ready(): WorkerLike {
    if (this.#worker) return this.#worker
    const worker = this.#start()
    worker.addEventListener('message', ({ data }) => this.#receive(data))
    worker.addEventListener('error', (event) => {
      event.preventDefault()
      const [first] = this.#open.keys()
      const message = event.message || words().worker.notStarted
      if (worker === this.#worker && first !== undefined) this.#giveUp(first, { code: 'unexpected', message })
    })
    this.#worker = worker
    return worker
  }

  #drop(): void {
    clearTimeout(this.#clock)
    this.#worker?.terminate()
    this.#worker = null
  }

  /** The question that is being answered is the oldest; its time runs from when the one before it ended. */
  #wind(): void {
    clearTimeout(this.#clock)
    const [first] = this.#open.values()
    if (!first) return
    const { id, kind } = first.question
    const seconds = this.#budgets[kind]
    const failure: Failure = { code: 'overBudget', message: words().worker.tooLong(seconds) }
    let left = turns
    const turn = () => {
      left--
      if (left > 0) this.#clock = setTimeout(turn, (seconds * 1000) / turns)
      else this.#giveUp(id, failure)
    }
    this.#clock = setTimeout(turn, (seconds * 1000) / turns)
  }

  #giveUp(id: number, failure: Failure): void {
    const failed = this.#open.get(id)
    this.#open.delete(id)
    this.#drop()
    for (const { question } of this.#open.values()) this.#ready().postMessage(question)
    this.#wind()
    failed?.reject(new ModelFailure(failure))
  }

  #receive(message: FromWorker): void {
    const open = this.#open.get(message.id)
    if (!open) return
    if ('progress' in message) {
      open.progress?.(message.progress.done, message.progress.total)
      return
    }
    // A worker that broke or filled its memory is not asked again; one that only refused a document is.
    const failure = 'failure' in message ? message.failure : null
    if (failure?.code === 'unexpected') this.#giveUp(message.id, failure)
    else if (failure?.code === 'outOfMemory')
      this.#giveUp(message.id, { code: 'overBudget', message: words().worker.tooLarge })
    else {
      this.#open.delete(message.id)
      this.#wind()
      if (failure) open.reject(new ModelFailure({ ...failure, message: refusalWords(failure) }))
      else if ('answer' in message) open.resolve(message.answer)
    }
  }
}
