import { EventEmitter } from 'node:events'
import type { Live, LiveNews } from './types.ts'

/** News within this process. */
export class InProcessLive implements Live {
  readonly #emitter = new EventEmitter().setMaxListeners(0)

  publish(workspace: string, news: LiveNews): void {
    this.#emitter.emit(workspace, news)
  }

  hear(workspace: string, heard: (news: LiveNews) => void): () => void {
    this.#emitter.on(workspace, heard)
    return () => this.#emitter.off(workspace, heard)
  }
}
