import { ModelFailure } from './failure.ts'
import type { FromWorker, Kind, Questions, ToWorker } from './protocol.ts'

export interface AskOptions {
  signal?: AbortSignal
  progress?(done: number, total: number): void
  /** Asked for by a person who waits for it: it does not queue behind what the screen computes by itself. */
  asked?: boolean
}

interface Waiting {
  resolve(answer: unknown): void
  reject(error: Error): void
  progress?(done: number, total: number): void
}

/** One worker with its open questions. Ending it rejects them. */
class Hand {
  readonly waiting = new Map<number, Waiting>()
  private readonly worker = new Worker(new URL('./model.worker.ts', import.meta.url), { type: 'module' })

  constructor() {
    this.worker.addEventListener('message', (event: MessageEvent<FromWorker>) => this.receive(event.data))
    this.worker.addEventListener('error', (event) => {
      event.preventDefault()
      this.end(
        new ModelFailure({ code: 'unexpected', message: event.message || 'The computation could not be started.' }),
      )
    })
  }

  send(question: ToWorker, waiting: Waiting): void {
    this.waiting.set(question.id, waiting)
    this.worker.postMessage(question)
  }

  end(reason: Error): void {
    this.worker.terminate()
    for (const open of this.waiting.values()) open.reject(reason)
    this.waiting.clear()
  }

  private receive(message: FromWorker): void {
    const open = this.waiting.get(message.id)
    if (!open) return
    if ('progress' in message) {
      open.progress?.(message.progress.done, message.progress.total)
      return
    }
    this.waiting.delete(message.id)
    if ('failure' in message) open.reject(new ModelFailure(message.failure))
    else open.resolve(message.answer)
  }
}

const stopped = () => new DOMException('The computation was stopped.', 'AbortError')

let number = 0
const live = new Map<Lane, Hand>()
const idle: Hand[] = []
const queue: (() => void)[] = []
let busy = 0
/** One processor stays free for what follows a key press. */
const most = Math.max(1, Math.min(3, (globalThis.navigator?.hardwareConcurrency ?? 2) - 1))

/** Workers that only follow edits: for the points shown at once, for the strip's bars, for the exact plan behind, for the field. */
export type Lane = 'at once' | 'bars' | 'exact' | 'field'

/** What follows a key press: a worker of its own lane, never behind long work. */
export function askLive<K extends Kind>(
  lane: Lane,
  kind: K,
  ask: Questions[K]['ask'],
): Promise<Questions[K]['answer']> {
  const hand = live.get(lane) ?? new Hand()
  live.set(lane, hand)
  return new Promise((resolve, reject) => {
    const fail = (error: Error) => {
      // A worker that broke is not asked again; one that only refused a document is.
      if (error instanceof ModelFailure && error.failure.code === 'unexpected') {
        live.delete(lane)
        hand.end(error)
      }
      reject(error)
    }
    hand.send({ id: ++number, kind, ...ask } as ToWorker, { resolve: resolve as Waiting['resolve'], reject: fail })
  })
}

/** Long work: a few workers, the rest waits its turn. Aborting ends the worker, which stops at once. */
export async function askModel<K extends Kind>(
  kind: K,
  ask: Questions[K]['ask'],
  options: AskOptions = {},
): Promise<Questions[K]['answer']> {
  await turn(options)
  const hand = idle.pop() ?? new Hand()
  let usable = true
  const abort = () => {
    usable = false
    hand.end(stopped())
  }
  options.signal?.addEventListener('abort', abort, { once: true })
  try {
    return await new Promise((resolve, reject) => {
      const waiting = { resolve: resolve as Waiting['resolve'], reject, progress: options.progress }
      hand.send({ id: ++number, kind, ...ask } as ToWorker, waiting)
    })
  } catch (error) {
    if (error instanceof ModelFailure && error.failure.code === 'unexpected') {
      usable = false
      hand.end(error)
    }
    throw error
  } finally {
    options.signal?.removeEventListener('abort', abort)
    if (usable) idle.push(hand)
    busy--
    queue.shift()?.()
  }
}

async function turn({ signal, asked }: AskOptions): Promise<void> {
  if (signal?.aborted) throw stopped()
  while (busy >= most && !asked) {
    await new Promise<void>((resolve) => queue.push(resolve))
    if (signal?.aborted) {
      queue.shift()?.()
      throw stopped()
    }
  }
  busy++
}
