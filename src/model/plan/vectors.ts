/**
 * Many vectors of one length in one block of memory, handed out and taken back: a distribution per state that the
 * match can be in. Each knows the range in which it is not zero.
 */
export class Vectors {
  readonly length: number
  data: Float64Array
  low: Int32Array
  high: Int32Array
  private readonly free: number[] = []
  private used = 0

  constructor(length: number, capacity = 64) {
    this.length = length
    this.data = new Float64Array(length * capacity)
    this.low = new Int32Array(capacity)
    this.high = new Int32Array(capacity)
  }

  take(): number {
    const slot = this.free.pop() ?? this.used++
    if (slot >= this.low.length) this.grow()
    this.low[slot] = this.length
    this.high[slot] = -1
    return slot
  }

  give(slot: number): void {
    const start = slot * this.length
    if ((this.high[slot] as number) >= 0)
      this.data.fill(0, start + (this.low[slot] as number), start + (this.high[slot] as number) + 1)
    this.free.push(slot)
  }

  /** Drop what is negligible at both ends. */
  trim(slot: number, negligible: number): void {
    const start = slot * this.length
    let low = this.low[slot] as number
    let high = this.high[slot] as number
    while (low <= high && (this.data[start + low] as number) < negligible) this.data[start + low++] = 0
    while (high >= low && (this.data[start + high] as number) < negligible) this.data[start + high--] = 0
    this.low[slot] = low
    this.high[slot] = high
  }

  private grow(): void {
    const capacity = this.low.length * 2
    const data = new Float64Array(this.length * capacity)
    data.set(this.data)
    this.data = data
    const low = new Int32Array(capacity)
    low.set(this.low)
    this.low = low
    const high = new Int32Array(capacity)
    high.set(this.high)
    this.high = high
  }
}

/**
 * target[stride · i + by] += weight · source[i]; a real `by` is shared between its two neighbours, so that the mean
 * is kept. Beyond the target's end mass is kept on the last point.
 */
export function addMoved(
  source: Vectors,
  from: number,
  target: Vectors,
  to: number,
  weight: number,
  by: number,
  stride: number,
): void {
  const whole = Math.floor(by + 1e-7)
  const share = by - whole
  if (share > 1e-7) {
    addWhole(source, from, target, to, weight * (1 - share), whole, stride)
    addWhole(source, from, target, to, weight * share, whole + 1, stride)
  } else addWhole(source, from, target, to, weight, whole, stride)
}

function addWhole(
  source: Vectors,
  from: number,
  target: Vectors,
  to: number,
  weight: number,
  by: number,
  stride: number,
): void {
  const low = source.low[from] as number
  const high = source.high[from] as number
  if (low > high) return
  const first = Math.min(target.length - 1, low * stride + by)
  const last = Math.min(target.length - 1, high * stride + by)
  if (first < (target.low[to] as number)) target.low[to] = first
  if (last > (target.high[to] as number)) target.high[to] = last
  const origin = from * source.length
  const base = to * target.length + by
  const { data } = source
  const out = target.data
  if (high * stride + by < target.length) {
    if (stride === 1)
      for (let i = low; i <= high; i++)
        out[base + i] = (out[base + i] as number) + weight * (data[origin + i] as number)
    else
      for (let i = low; i <= high; i++)
        out[base + i * stride] = (out[base + i * stride] as number) + weight * (data[origin + i] as number)
    return
  }
  const end = target.length - 1 - by
  for (let i = low; i <= high; i++) {
    const place = base + Math.min(end, i * stride)
    out[place] = (out[place] as number) + weight * (data[origin + i] as number)
  }
}
