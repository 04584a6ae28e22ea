import type { Reader, Writer } from './bytes.ts'
import { CodeError } from './failure.ts'
import { readMoment, writeMoment } from './moment.ts'

const scales = [1, 10, 100] as const
const raw = 3

const signed = (value: number): number => (value < 0 ? -2 * value - 1 : 2 * value)
const unsigned = (value: number): number => (value % 2 === 1 ? -(value + 1) / 2 : value / 2)

/** Any number, exactly: up to hundredths as a whole number of them, others by their 8 bytes. */
export function writeNumber(writer: Writer, value: number): void {
  for (const [index, scale] of scales.entries()) {
    const whole = Math.round(value * scale)
    if (Math.abs(whole) < 2 ** 40 && whole / scale === value) {
      writer.whole(signed(whole === 0 ? 0 : whole) * 4 + index)
      return
    }
  }
  const bytes = new Uint8Array(8)
  new DataView(bytes.buffer).setFloat64(0, value)
  writer.whole(raw).all(bytes)
}

export function readNumber(reader: Reader): number {
  const head = reader.whole()
  if (head === raw) return new DataView(reader.all(8).buffer).getFloat64(0)
  const scale = scales[head % 4]
  if (scale === undefined) throw new CodeError('damaged')
  return unsigned(Math.floor(head / 4)) / scale
}

export function writeText(writer: Writer, text: string): void {
  writer.block(new TextEncoder().encode(text))
}

export function readText(reader: Reader): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(reader.block())
  } catch {
    throw new CodeError('damaged')
  }
}

const uuidForm = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

export const isUuid = (text: string): boolean => uuidForm.test(text)

/** The 16 bytes of a UUID in small letters (RFC 9562). */
export function writeUuid(writer: Writer, uuid: string): void {
  const digits = uuid.replaceAll('-', '')
  for (let at = 0; at < 32; at += 2) writer.byte(Number.parseInt(digits.slice(at, at + 2), 16))
}

export function readUuid(reader: Reader): string {
  const digits = [...reader.all(16)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return [0, 8, 12, 16, 20].map((from, index) => digits.slice(from, [8, 12, 16, 20, 32][index])).join('-')
}

/** A moment of the phone's clock: 6 bytes where it is written as clocks write it in UTC, its text otherwise. */
export function writeClock(writer: Writer, moment: string): void {
  const milliseconds = readMoment(moment)
  if (milliseconds === null) {
    writer.byte(1)
    writeText(writer, moment)
  } else writer.byte(0).fixed(milliseconds, 6)
}

export function readClock(reader: Reader): string {
  return reader.byte() === 0 ? writeMoment(reader.fixed(6)) : readText(reader)
}
