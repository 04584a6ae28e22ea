/** 0 … 255 at random; also where the page is not secure, in which browsers offer no ready-made ids. */
const random = (bytes: Uint8Array<ArrayBuffer>) => crypto.getRandomValues(bytes)

/**
 * A UUID of version 7 (RFC 9562, section 5.7): 48 bits of time in ms, the rest random. Nothing is ordered by it; the time only
 * keeps the database's index compact.
 */
export function madeId(now = Date.now(), fill = random): string {
  const bytes = fill(new Uint8Array(16))
  for (let index = 0; index < 6; index++) bytes[index] = Math.floor(now / 256 ** (5 - index)) % 256
  bytes[6] = 0x70 | (bytes[6]! & 0x0f)
  bytes[8] = 0x80 | (bytes[8]! & 0x3f)
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-')
}
