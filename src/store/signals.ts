import { EventEmitter } from 'node:events'

/** Short messages between all processes that use one database. They are told soon, and may get lost while a connection is broken. */
export interface Signals {
  /** Whether other processes may send too. */
  readonly shared: boolean
  /** Tells everybody who hears the topic, in this process at once and in the others soon after. Resolves when it is on its way. */
  send(topic: string, message: string): Promise<void>
  /** Returns how to stop. */
  hear(topic: string, heard: (message: string) => void): () => void
  /** Told when messages of others may have been missed: whatever they keep current is to be read anew. Returns how to stop. */
  missed(told: () => void): () => void
}

/** Within one process: nothing is ever missed. */
export class OwnSignals implements Signals {
  readonly shared = false
  readonly #emitter = new EventEmitter().setMaxListeners(0)

  async send(topic: string, message: string): Promise<void> {
    this.#emitter.emit(topic, message)
  }

  hear(topic: string, heard: (message: string) => void): () => void {
    this.#emitter.on(topic, heard)
    return () => this.#emitter.off(topic, heard)
  }

  missed(): () => void {
    return () => {}
  }
}
