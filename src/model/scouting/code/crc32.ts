const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1
  return rest
})

/**
 * The check sum CRC-32 of zip files and Ethernet, as an unsigned number.
 *
 * Source: ISO/IEC 3309, reflected polynomial 0xEDB88320.
 *
 * @example crc32(new TextEncoder().encode('123456789')) // 0xcbf43926
 */
export function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff
  for (const byte of bytes) rest = table[(rest ^ byte) & 0xff]! ^ (rest >>> 8)
  return (rest ^ 0xffffffff) >>> 0
}
