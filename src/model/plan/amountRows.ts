import type { Workspace } from '../kernel/index.ts'
import type { Arrival } from './run.ts'
import type { Vectors } from './vectors.ts'

/** Probability below this, in one state at one time with one amount, is not followed further. */
export const negligible = 1e-10

/** The decisions at one node: a vector over time left per room and amount so far. */
export class AmountRows {
  readonly vectors: Vectors
  readonly amounts: number
  active: number[] = []
  /** Slot by room · amounts + amount. */
  private readonly index = new Map<number, number>()
  private readonly space: Workspace

  /** @param amounts how many amounts there are; what is above counts as the last */
  constructor(vectors: Vectors, amounts: number) {
    this.vectors = vectors
    this.space = vectors.space
    this.amounts = amounts
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
    if (low === high)
      this.space.data[place] = (this.space.data[place] as number) + chance * (this.space.data[at + low] as number)
    else this.space.kernel.addScaled(place, at + low, high - low + 1, chance)
    this.vectors.widen(slot, first + low, first + high)
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
      this.index.delete(vectors.tag[slot] as number)
      vectors.give(slot)
    }
    this.active.length = kept
  }

  private slot(room: number, amount: number): number {
    const key = room * this.amounts + Math.min(amount, this.amounts - 1)
    let found = this.index.get(key)
    if (found === undefined) {
      found = this.vectors.take(key)
      this.index.set(key, found)
      this.active.push(found)
    }
    return found
  }
}
