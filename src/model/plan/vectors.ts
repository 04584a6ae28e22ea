import type { Workspace } from '../kernel/index.ts'

/**
 * Many vectors of one length in a workspace, handed out and taken back: a stretch of time for every state and amount that
 * the match can be in. Each knows the range in which it may be other than zero.
 */
export class Vectors {
  readonly space: Workspace
  /** Place of each vector in the workspace. */
  readonly place: number[] = []
  readonly low: number[] = []
  readonly high: number[] = []
  /** What the holder of a vector knows it by. */
  readonly tag: number[] = []
  /** How long a vector is that is taken from now on: as long as those before, or less. */
  length: number
  private readonly free: number[] = []

  constructor(space: Workspace, length: number) {
    this.space = space
    this.length = length
  }

  /** A vector of zeros. The workspace may grow: read its numbers anew. */
  take(tag: number): number {
    const slot = this.free.pop() ?? this.place.push(this.space.take(this.length)) - 1
    this.tag[slot] = tag
    this.low[slot] = this.length
    this.high[slot] = -1
    return slot
  }

  /** Takes a vector back that holds only zeros. */
  give(slot: number): void {
    this.free.push(slot)
  }

  /** Note that the vector may now be other than zero from `low` to `high`. */
  widen(slot: number, low: number, high: number): void {
    if (low < (this.low[slot] as number)) this.low[slot] = low
    if (high > (this.high[slot] as number)) this.high[slot] = high
  }

  /** Puts zeros from `low` up to where the vector may be other than zero. */
  clearFrom(slot: number, low: number): void {
    const start = this.place[slot] as number
    this.space.data.fill(0, start + low, start + (this.high[slot] as number) + 1)
    this.high[slot] = low - 1
    if (low <= (this.low[slot] as number)) {
      this.low[slot] = this.length
      this.high[slot] = -1
    }
  }
}
