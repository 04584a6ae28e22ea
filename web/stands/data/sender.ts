import { pauseAfter } from './backoff.ts'
import { type Means, type Passed, passOver, somethingWaits } from './pass.ts'

/** What the sender is at, as the page says it. */
export type Sending =
  | { doing: 'idle' }
  | { doing: 'sending' }
  /** `until`: ms since 1970. */
  | { doing: 'waiting'; why: 'noServer' | 'busy' | 'otherTab'; until: number }
  | { doing: 'stopped'; why: 'signIn' }

export interface Sender {
  /** At once: a record was made, the network is said to be back, somebody came back to the page or pressed for it. */
  wake(): void
  /** Somebody taps something else: where the server could not be reached some seconds ago, it is tried once more. */
  nudge(): void
  now(): Sending
  subscribe(listener: () => void): () => void
  /** Resolves when the pass that runs has ended. */
  settled(): Promise<void>
  stop(): void
}

/** One tab of a browser sends at a time; where locks are refused, two may, and the server tells the same row by its id. */
export interface Locks {
  request<T>(name: string, options: { ifAvailable: true }, held: (lock: unknown) => Promise<T>): Promise<T>
}

export interface Ways extends Means {
  locks: Locks | undefined
  random?: () => number
}

const lockName = 'cyclewright-stands/sender'
/** How long after a try a tap is no reason for another (ms): in a match there is one every second. */
const untilNudged = 5000
/** How soon to look again whether another tab has sent everything (ms). */
const afterOtherTab = 2000

/** Sends the outbox whenever something is in it and the server can be reached. */
export function startSender({ locks, random, ...means }: Ways): Sender {
  let state: Sending = { doing: 'idle' }
  let failures = 0
  let tried = 0
  let timer: ReturnType<typeof setTimeout> | undefined
  let running: Promise<void> | null = null
  let again = false
  let ended = false
  const listeners = new Set<() => void>()

  const become = (next: Sending) => {
    state = next
    for (const listener of listeners) listener()
  }

  const waitFor = (why: 'noServer' | 'busy' | 'otherTab', pause: number) => {
    tried = means.now()
    become({ doing: 'waiting', why, until: means.now() + pause })
    timer = setTimeout(begin, pause)
  }

  const took = async (passed: Passed | 'otherTab') => {
    if (ended) return
    if (passed === 'empty') {
      failures = 0
      become({ doing: 'idle' })
    } else if (passed === 'otherTab') {
      if (await somethingWaits(means.database)) waitFor('otherTab', afterOtherTab)
      else become({ doing: 'idle' })
    } else if (passed.failed === 'signIn') {
      failures = 0
      become({ doing: 'stopped', why: 'signIn' })
    } else {
      failures++
      const own = pauseAfter(failures, random)
      const pause = passed.failed === 'busy' && passed.after !== null ? Math.max(passed.after, own / 4) : own
      if (await somethingWaits(means.database)) waitFor(passed.failed, pause)
      else become({ doing: 'idle' })
    }
  }

  const alone = (): Promise<Passed | 'otherTab'> =>
    locks
      ? locks.request(lockName, { ifAvailable: true }, async (lock) => (lock ? passOver(means) : 'otherTab'))
      : passOver(means)

  const pass = async () => {
    do {
      again = false
      clearTimeout(timer)
      become({ doing: 'sending' })
      try {
        await took(await alone())
      } catch {
        // The phone's own storage failed; what is in it stays there.
        if (!ended) waitFor('noServer', pauseAfter(++failures, random))
      }
    } while (again && !ended)
  }

  function begin() {
    if (ended) return
    clearTimeout(timer)
    if (running) {
      again = true
      return
    }
    running = pass().finally(() => {
      running = null
    })
  }

  return {
    wake: () => {
      failures = 0
      begin()
    },
    nudge: () => {
      const unreached = state.doing === 'waiting' && state.why === 'noServer'
      if (unreached && means.now() - tried >= untilNudged) begin()
    },
    now: () => state,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    settled: () => running ?? Promise.resolve(),
    stop: () => {
      ended = true
      clearTimeout(timer)
    },
  }
}
