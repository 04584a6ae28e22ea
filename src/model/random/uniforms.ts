import { philox } from './philox.ts'

/** Up to three whole numbers that name a stream, such as replicate, robot and purpose; each counts modulo 2³². */
export type Stream = readonly [] | readonly [number] | readonly [number, number] | readonly [number, number, number]

/**
 * A stream of uniform numbers strictly between 0 and 1, so that every quantile function takes them: (word + ½) / 2³².
 * Seed (a whole number below 2⁵³) and stream name decide the numbers; other seeds and streams give independent ones.
 */
export class Uniforms {
  private readonly key = new Uint32Array(2)
  private readonly counter = new Uint32Array(4)
  private readonly words = new Uint32Array(4)
  private used = 4

  constructor(seed: number, stream: Stream = []) {
    this.key[0] = seed % 2 ** 32
    this.key[1] = Math.floor(seed / 2 ** 32)
    for (let i = 0; i < stream.length; i++) this.counter[i + 1] = stream[i]!
  }

  next(): number {
    if (this.used === 4) {
      philox(this.counter, this.key, this.words)
      this.counter[0]!++
      this.used = 0
    }
    return (this.words[this.used++]! + 0.5) / 2 ** 32
  }

  /** A whole number from 0 to count − 1; for counts far below 2³², where the bias of rounding is nothing. */
  below(count: number): number {
    return Math.floor(this.next() * count)
  }
}
