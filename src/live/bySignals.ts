import type { Signals } from '../store/types.ts'
import { type Live, type LiveNews, liveKinds } from './types.ts'

/** News to whoever looks, at this process or at another one of the same database. */
export class LiveBySignals implements Live {
  readonly #signals: Signals
  readonly #log: (error: unknown) => void

  /** @param log told when the other processes could not be told */
  constructor(signals: Signals, log: (error: unknown) => void) {
    this.#signals = signals
    this.#log = log
  }

  publish(workspace: string, news: LiveNews): void {
    this.#signals.send(topicOf(workspace), JSON.stringify(news)).catch(this.#log)
  }

  hear(workspace: string, heard: (news: LiveNews) => void): () => void {
    const deaf = this.#signals.hear(topicOf(workspace), (message) => heard(JSON.parse(message) as LiveNews))
    // Whoever may have missed something asks for everything anew.
    const unaware = this.#signals.missed(() => {
      for (const what of liveKinds) heard({ event: null, what })
    })
    return () => {
      deaf()
      unaware()
    }
  }
}

const topicOf = (workspace: string): string => `live ${workspace}`
