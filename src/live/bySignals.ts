import type { Signals } from '../store/types.ts'
import { type Live, type LiveNews, liveKinds } from './types.ts'

/** News to whoever looks, at this process or at another one of the same database. */
export class LiveBySignals implements Live {
  readonly #signals: Signals
  readonly #began = performance.now()
  /** Of each workspace: since when it is heard, and when each kind of news was told last. */
  readonly #told = new Map<string, { since: number; last: Map<string, number> }>()
  readonly #log: (error: unknown) => void

  /** @param log told when the other processes could not be told */
  constructor(signals: Signals, log: (error: unknown) => void) {
    this.#signals = signals
    this.#log = log
  }

  /** What is told of a workspace is noted from the first time that anybody here has to do with it. */
  #noted(workspace: string) {
    const before = this.#told.get(workspace)
    if (before) return before
    // Where others may have told something before, it counts as told now.
    const noted = { since: this.#signals.shared ? performance.now() : this.#began, last: new Map<string, number>() }
    this.#told.set(workspace, noted)
    this.#signals.hear(topicOf(workspace), (message) => {
      noted.last.set(keyOf(JSON.parse(message) as LiveNews), performance.now())
    })
    this.#signals.missed(() => {
      noted.since = performance.now()
    })
    return noted
  }

  ages(workspace: string, event: string) {
    const now = performance.now()
    const { since, last } = this.#noted(workspace)
    const toldAt = (of: string | null, what: LiveNews['what']) =>
      Math.max(since, last.get(keyOf({ event: of, what })) ?? 0)
    const age = (what: LiveNews['what']) => Math.ceil(now - Math.max(toldAt(event, what), toldAt(null, what)))
    return Object.fromEntries(liveKinds.map((what) => [what, age(what)])) as { [what in LiveNews['what']]: number }
  }

  publish(workspace: string, news: LiveNews): void {
    this.#noted(workspace)
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

const keyOf = ({ event, what }: LiveNews): string => JSON.stringify([event, what])

const topicOf = (workspace: string): string => `live ${workspace}`
