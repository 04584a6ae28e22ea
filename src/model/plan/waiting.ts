import type { Workspace } from '../kernel/index.ts'
import type { Problem } from './problem.ts'
import { Clip } from './run.ts'

/**
 * Probability that has arrived and waits for its decision: a row over time left for every node and room (slot node · rooms +
 * room), made when the first of it arrives. Each knows the range in which it may be other than zero.
 */
export class Waiting {
  readonly low: Int32Array
  readonly high: Int32Array
  private readonly places: Int32Array
  private readonly space: Workspace
  private readonly rooms: number
  private readonly length: number
  private readonly clips: Clip
  /** The block's first time, and the rooms that count for less somewhere in it. */
  private from = 0
  private clipped: number[] = []

  constructor(problem: Problem, space: Workspace) {
    const { graph, rooms, steps } = problem
    const slots = graph.nodes.length * rooms.size
    this.space = space
    this.rooms = rooms.size
    this.length = steps + 1
    this.clips = Clip.of(problem)
    this.low = new Int32Array(slots).fill(this.length)
    this.high = new Int32Array(slots).fill(-1)
    this.places = new Int32Array(slots).fill(-1)
  }

  /** Place of a row's time 0 in the workspace, which may grow; the kernel may write eight numbers beyond the end. */
  place(slot: number): number {
    const known = this.places[slot] as number
    if (known >= 0) return known
    const place = this.space.take(this.length + 8)
    this.places[slot] = place
    return place
  }

  /** Note that a row may now be other than zero from `low` to `high`. */
  widen(slot: number, low: number, high: number): void {
    if (low < (this.low[slot] as number)) this.low[slot] = low
    if (high > (this.high[slot] as number)) this.high[slot] = high
  }

  /** Puts zeros from `low` up to where the row may be other than zero. */
  clearFrom(slot: number, low: number): void {
    this.space.kernel.clear(this.place(slot) + low, (this.high[slot] as number) + 1 - low)
    this.endBefore(slot, low)
  }

  /** The block begins at time left `from`. */
  begin(from: number): void {
    const { clearFrom } = this.clips
    this.from = from
    this.clipped = []
    for (let r = 1; r < this.rooms; r++) if ((clearFrom[r] as number) > from) this.clipped.push(r)
  }

  /** What waits at a node within the block in rooms that count for less goes to the rooms as which they count. */
  clip(node: number): void {
    const { clips, clipped, space, from } = this
    for (let i = 0; i < clipped.length; i++) {
      const r = clipped[i] as number
      const slot = node * this.rooms + r
      const low = Math.max(from, this.low[slot] as number)
      const end = Math.min((this.high[slot] as number) + 1, clips.clearFrom[r] as number)
      if (low >= end) continue
      const start = this.place(slot)
      for (let t = low; t < end; ) {
        const until = clips.sameUntil(r, t, end)
        const counted = node * this.rooms + clips.at(r, t)
        const place = this.place(counted)
        space.kernel.addScaled(place + t, start + t, until - t, 1)
        this.widen(counted, t, until - 1)
        t = until
      }
      space.kernel.clear(start + low, end - low)
      if (end > (this.high[slot] as number)) this.endBefore(slot, low)
    }
  }

  private endBefore(slot: number, low: number): void {
    const empty = low <= (this.low[slot] as number)
    this.high[slot] = empty ? -1 : low - 1
    if (empty) this.low[slot] = this.length
  }
}
