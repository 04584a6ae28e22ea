/** How a long computation is watched and stopped. Both are called between plans, many times a second. */
export interface Watch {
  progress?(done: number, total: number): void
  cancelled?(): boolean
}

/** Thrown when `cancelled` answered true. Nothing is wrong with the request. */
export class Cancelled extends Error {
  constructor() {
    super('The computation was stopped.')
    this.name = 'Cancelled'
  }
}

/** Counts steps: each call reports the progress, and throws Cancelled if the watcher wants to stop. */
export function counter(watch: Watch | undefined, total: number): (steps?: number) => void {
  let done = 0
  return (steps = 1) => {
    if (watch?.cancelled?.()) throw new Cancelled()
    done += steps
    watch?.progress?.(Math.min(done, total), total)
  }
}
