/** Numbers that idle vectors may keep (32 MB); larger blocks are left to the collector. */
const mostKept = 4_000_000

const idle = new Map<number, Vectors>()

/**
 * Many vectors of one length in one block of memory, handed out and taken back: a stretch of time for every state
 * and amount that the match can be in. Each knows the range in which it may be other than zero.
 */
export class Vectors {
  readonly length: number
  data: Float64Array
  low: Int32Array
  high: Int32Array
  /** What the holder of a vector knows it by. */
  tag: Int32Array
  private readonly free: number[] = []
  private used = 0

  private constructor(length: number) {
    const capacity = 512
    this.length = length
    this.data = new Float64Array(length * capacity)
    this.low = new Int32Array(capacity).fill(length)
    this.high = new Int32Array(capacity).fill(-1)
    this.tag = new Int32Array(capacity)
  }

  /** Vectors that nobody uses, all zero; those of the last calculation, if there were not too many. */
  static borrowed(length: number): Vectors {
    const known = idle.get(length)
    idle.delete(length)
    return known ?? new Vectors(length)
  }

  /** Takes all vectors back for the next calculation. */
  giveBack(): void {
    for (let slot = 0; slot < this.used; slot++) this.clear(slot)
    this.free.length = 0
    this.used = 0
    if (idle.size >= 4) idle.clear()
    if (this.data.length <= mostKept) idle.set(this.length, this)
  }

  take(tag: number): number {
    const slot = this.free.pop() ?? this.used++
    if (slot >= this.low.length) this.grow()
    this.tag[slot] = tag
    return slot
  }

  give(slot: number): void {
    this.clear(slot)
    this.free.push(slot)
  }

  private clear(slot: number): void {
    const start = slot * this.length
    const high = this.high[slot] as number
    if (high >= 0) this.data.fill(0, start + (this.low[slot] as number), start + high + 1)
    this.low[slot] = this.length
    this.high[slot] = -1
  }

  /** Note that the vector may now be other than zero from `low` to `high`. */
  widen(slot: number, low: number, high: number): void {
    if (low < (this.low[slot] as number)) this.low[slot] = low
    if (high > (this.high[slot] as number)) this.high[slot] = high
  }

  private grow(): void {
    const capacity = this.low.length * 2
    const data = new Float64Array(this.length * capacity)
    data.set(this.data)
    this.data = data
    this.low = widened(this.low, capacity, this.length)
    this.high = widened(this.high, capacity, -1)
    this.tag = widened(this.tag, capacity, 0)
  }
}

function widened(numbers: Int32Array, capacity: number, rest: number): Int32Array {
  const out = new Int32Array(capacity).fill(rest)
  out.set(numbers)
  return out
}
