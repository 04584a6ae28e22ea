import { CodeError } from './failure.ts'

/** Writes bytes one after the other. Whole numbers take 7 bits a byte, the lowest first, so that small ones take one. */
export class Writer {
  private readonly bytes: number[] = []

  get length(): number {
    return this.bytes.length
  }

  byte(value: number): this {
    this.bytes.push(value & 255)
    return this
  }

  /** Of fixed width, the highest byte first. */
  fixed(value: number, width: number): this {
    for (let shift = width - 1; shift >= 0; shift--) this.byte(Math.floor(value / 2 ** (8 * shift)) % 256)
    return this
  }

  /** A whole number from 0 to 2^53 − 1. */
  whole(value: number): this {
    for (; value >= 128; value = Math.floor(value / 128)) this.byte((value % 128) + 128)
    return this.byte(value)
  }

  all(bytes: Iterable<number>): this {
    for (const byte of bytes) this.byte(byte)
    return this
  }

  /** Bytes behind their number. */
  block(bytes: Uint8Array): this {
    return this.whole(bytes.length).all(bytes)
  }

  done(): Uint8Array {
    return Uint8Array.from(this.bytes)
  }
}

/** Reads what a Writer wrote; past the end, or beyond what it writes, the bytes are damaged. */
export class Reader {
  private at = 0
  private readonly bytes: Uint8Array

  constructor(bytes: Uint8Array) {
    this.bytes = bytes
  }

  get left(): number {
    return this.bytes.length - this.at
  }

  byte(): number {
    const value = this.bytes[this.at++]
    if (value === undefined) throw new CodeError('damaged')
    return value
  }

  fixed(width: number): number {
    let value = 0
    for (let read = 0; read < width; read++) value = value * 256 + this.byte()
    return value
  }

  whole(): number {
    let value = 0
    for (let scale = 1; ; scale *= 128) {
      const byte = this.byte()
      value += (byte % 128) * scale
      if (!Number.isSafeInteger(value)) throw new CodeError('damaged')
      if (byte < 128) return value
    }
  }

  all(length: number): Uint8Array {
    if (length > this.left) throw new CodeError('damaged')
    this.at += length
    return this.bytes.slice(this.at - length, this.at)
  }

  block(): Uint8Array {
    return this.all(this.whole())
  }

  rest(): Uint8Array {
    return this.all(this.left)
  }

  /** Nothing may be left. */
  end(): void {
    if (this.left > 0) throw new CodeError('damaged')
  }
}
