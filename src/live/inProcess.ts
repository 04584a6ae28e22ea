import { EventEmitter } from 'node:events'
import { type Live, type LiveNews, liveKinds } from './types.ts'

/** News within this process. */
export class InProcessLive implements Live {
  readonly #emitter = new EventEmitter().setMaxListeners(0)
  readonly #began = performance.now()
  readonly #last = new Map<string, number>()

  publish(workspace: string, news: LiveNews): void {
    this.#last.set(keyOf(workspace, news), performance.now())
    this.#emitter.emit(workspace, news)
  }

  ages(workspace: string, event: string) {
    const now = performance.now()
    const last = (of: string | null, what: LiveNews['what']) =>
      this.#last.get(keyOf(workspace, { event: of, what })) ?? this.#began
    const age = (what: LiveNews['what']) => Math.ceil(now - Math.max(last(event, what), last(null, what)))
    return Object.fromEntries(liveKinds.map((what) => [what, age(what)])) as { [what in LiveNews['what']]: number }
  }

  hear(workspace: string, heard: (news: LiveNews) => void): () => void {
    this.#emitter.on(workspace, heard)
    return () => this.#emitter.off(workspace, heard)
  }
}

const keyOf = (workspace: string, { event, what }: LiveNews): string => JSON.stringify([workspace, event, what])
