import { CodeError } from './failure.ts'

const letters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'

/**
 * Bytes in the letters of a QR code's alphanumeric mode: 3 letters for 2 bytes, 3 % more than the bytes themselves. Readers
 * built into browsers give text only, and bytes that are no text get lost there.
 *
 * Source: RFC 9285.
 *
 * @example toBase45(new TextEncoder().encode('Hello!!')) // '%69 VD92EX0'
 */
export function toBase45(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += 2) {
    const pair = at + 1 < bytes.length
    const value = pair ? bytes[at]! * 256 + bytes[at + 1]! : bytes[at]!
    text += letters[value % 45]! + letters[Math.floor(value / 45) % 45]!
    if (pair) text += letters[Math.floor(value / 2025)]!
  }
  return text
}

/** The bytes that `toBase45` wrote. Other text is foreign. */
export function fromBase45(text: string): Uint8Array {
  if (text.length % 3 === 1) throw new CodeError('foreign')
  const bytes: number[] = []
  for (let at = 0; at < text.length; at += 3) {
    const [low, middle, high] = [...text.slice(at, at + 3)].map((letter) => letters.indexOf(letter))
    if (low! < 0 || middle! < 0 || (high !== undefined && high < 0)) throw new CodeError('foreign')
    const value = low! + 45 * middle! + 2025 * (high ?? 0)
    if (value > (high === undefined ? 255 : 65535)) throw new CodeError('foreign')
    if (high !== undefined) bytes.push(value >> 8)
    bytes.push(value & 255)
  }
  return Uint8Array.from(bytes)
}
