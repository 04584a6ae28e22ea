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

  constructor(length: number, capacity = 512) {
    this.length = length
    this.data = new Float64Array(length * capacity)
    this.low = new Int32Array(capacity)
    this.high = new Int32Array(capacity)
    this.tag = new Int32Array(capacity)
  }

  take(tag: number): number {
    const slot = this.free.pop() ?? this.used++
    if (slot >= this.low.length) this.grow()
    this.low[slot] = this.length
    this.high[slot] = -1
    this.tag[slot] = tag
    return slot
  }

  give(slot: number): void {
    const start = slot * this.length
    const high = this.high[slot] as number
    if (high >= 0) this.data.fill(0, start + (this.low[slot] as number), start + high + 1)
    this.free.push(slot)
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
    this.low = widened(this.low, capacity)
    this.high = widened(this.high, capacity)
    this.tag = widened(this.tag, capacity)
  }
}

function widened(numbers: Int32Array, capacity: number): Int32Array {
  const out = new Int32Array(capacity)
  out.set(numbers)
  return out
}
