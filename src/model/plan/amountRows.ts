import type { Workspace } from '../kernel/index.ts'
import type { Arrival } from './run.ts'
import type { Vectors } from './vectors.ts'

/** Probability below this, in one state at one time with one amount, is not followed further. */
export const negligible = 1e-10

/** The slots of 2 ** bits states are kept together. */
const bits = 8
const piece = 2 ** bits
const within = piece - 1

/** The decisions at one node: a vector over time left per room and amount so far. */
export class AmountRows {
  readonly vectors: Vectors
  readonly amounts: number
  active: number[] = []
  /** Slot + 1 by room · amounts + amount, 0 for none: in pieces, made when they are first met. */
  private readonly index: (Int32Array | undefined)[]
  private readonly space: Workspace

  /** @param amounts how many amounts there are; what is above counts as the last */
  constructor(vectors: Vectors, rooms: number, amounts: number) {
    this.vectors = vectors
    this.space = vectors.space
    this.amounts = amounts
    this.index = new Array(Math.ceil((rooms * amounts) / piece)).fill(undefined)
  }

  /** Adds the masses `from` … `from + count − 1` of an arrival, scaled by `chance`; what is negligible at both ends is left out. */
  add(room: number, amount: number, chance: number, arrival: Arrival, from: number, count: number): void {
    const least = negligible / chance
    let low = from - arrival.first
    let high = low + count - 1
    const { data } = this.space
    const { at, first } = arrival
    while (low <= high && (data[at + low] as number) < least) low++
    while (high >= low && (data[at + high] as number) < least) high--
    if (low > high) return
    const slot = this.slot(room, amount)
    const place = (this.vectors.place[slot] as number) + first + low
    this.space.kernel.addScaled(place, at + low, high - low + 1, chance)
    this.vectors.widen(slot, first + low, first + high)
  }

  /** Adds one mass at time `t`, if it is not negligible. */
  addOne(room: number, amount: number, mass: number, t: number): void {
    if (mass < negligible) return
    const slot = this.slot(room, amount)
    const { data } = this.space
    const place = (this.vectors.place[slot] as number) + t
    data[place] = (data[place] as number) + mass
    this.vectors.widen(slot, t, t)
  }

  /** Give back the vectors that hold nothing any more. */
  retire(): void {
    const { vectors } = this
    let kept = 0
    for (const slot of this.active) {
      if ((vectors.high[slot] as number) >= 0) {
        this.active[kept++] = slot
        continue
      }
      const key = vectors.tag[slot] as number
      this.pieceOf(key)[key & within] = 0
      vectors.give(slot)
    }
    this.active.length = kept
  }

  /** Room and amount so far of a vector. */
  stateOf(slot: number): { room: number; amount: number } {
    const key = this.vectors.tag[slot] as number
    return { room: Math.floor(key / this.amounts), amount: key % this.amounts }
  }

  private slot(room: number, amount: number): number {
    const key = room * this.amounts + Math.min(amount, this.amounts - 1)
    const slots = this.pieceOf(key)
    const found = slots[key & within] as number
    if (found > 0) return found - 1
    const slot = this.vectors.take(key)
    slots[key & within] = slot + 1
    this.active.push(slot)
    return slot
  }

  private pieceOf(key: number): Int32Array {
    const at = key >> bits
    const known = this.index[at]
    if (known) return known
    const made = new Int32Array(piece)
    this.index[at] = made
    return made
  }
}
