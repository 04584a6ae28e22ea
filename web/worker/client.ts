import { words } from '../words/catalogue.ts'
import { Hand, type Waiting, type WorkerLike } from './hand.ts'
import type { Kind, Questions, ToWorker } from './protocol.ts'

export interface AskOptions {
  signal?: AbortSignal
  progress?(done: number, total: number): void
  /** Asked for by a person who waits for it: it does not queue behind what the screen computes by itself. */
  asked?: boolean
}

const startWorker = (): WorkerLike => new Worker(new URL('./model.worker.ts', import.meta.url), { type: 'module' })

const stopped = () => new DOMException(words().worker.stopped, 'AbortError')

let number = 0
const live = new Map<Lane, Hand>()
const idle: Hand[] = []
const queue: (() => void)[] = []
let busy = 0
/** One processor stays free for what follows a key press. */
const most = Math.max(1, Math.min(3, (globalThis.navigator?.hardwareConcurrency ?? 2) - 1))

/** Workers that only follow edits: for the points shown at once, for the strip's bars, for the exact plan behind, for the field, for matches, for line-ups, for pick orders and two hands that refine them. */
export type Lane = 'at once' | 'bars' | 'exact' | 'field' | 'match' | 'lineup' | 'picks' | 'refine 0' | 'refine 1'

function asking<K extends Kind>(hand: Hand, kind: K, ask: Questions[K]['ask'], progress?: Waiting['progress']) {
  return new Promise<Questions[K]['answer']>((resolve, reject) => {
    const waiting: Waiting = { resolve: resolve as Waiting['resolve'], reject, progress }
    hand.send({ id: ++number, kind, ...ask } as ToWorker, waiting)
  })
}

/** What follows a key press: a worker of its own lane, never behind long work. */
export function askLive<K extends Kind>(
  lane: Lane,
  kind: K,
  ask: Questions[K]['ask'],
  progress?: Waiting['progress'],
): Promise<Questions[K]['answer']> {
  const hand = live.get(lane) ?? new Hand(startWorker)
  live.set(lane, hand)
  return asking(hand, kind, ask, progress)
}

let readied: string | null = null

/** Has the worker of picks load, and make the event ready as this browser keeps it, while the page and news from the server are on their way. */
export const readyPicks = (event: string): void => {
  if (readied === event) return
  readied = event
  askLive('picks', 'picksKept', { event }).catch(() => {
    // Whoever asks next is told.
  })
}

/** The same for what may be asked when the network is gone: its parts can not be loaded then. */
export const readyBriefing = (): void => {
  askModel('ready', { parts: ['briefing'] }).catch(() => {
    // As above.
  })
}

/** Ends at once what a lane's worker is at; it begins anew with the next question. */
export const endLive = (lane: Lane): void => live.get(lane)?.end(stopped())

/** Long work: a few workers, the rest waits its turn. Aborting ends the worker, which stops at once. */
export async function askModel<K extends Kind>(
  kind: K,
  ask: Questions[K]['ask'],
  options: AskOptions = {},
): Promise<Questions[K]['answer']> {
  await turn(options)
  const hand = idle.pop() ?? new Hand(startWorker)
  const abort = () => hand.end(stopped())
  options.signal?.addEventListener('abort', abort, { once: true })
  try {
    return await asking(hand, kind, ask, options.progress)
  } finally {
    options.signal?.removeEventListener('abort', abort)
    idle.push(hand)
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
