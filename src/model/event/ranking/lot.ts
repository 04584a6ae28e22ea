import { philox } from '../../random/index.ts'

/** A whole number from a text, always the same one: FNV-1a, 32 bits (Fowler, Noll and Vo; the constants are the published ones, from memory). */
function hashOf(text: string): number {
  let hash = 0x811c9dc5
  for (let index = 0; index < text.length; index++) {
    hash ^= text.charCodeAt(index)
    hash = Math.imul(hash, 0x01000193) >>> 0
  }
  return hash
}

/**
 * A team's lot, the lowest of which comes first: it hangs on the seed and on the team's number alone, so that a tie is split
 * alike whoever else is in it.
 */
export function lotOf(seed: number, team: string): number {
  const words = new Uint32Array(4)
  philox(new Uint32Array([hashOf(team), 0, 0, 0]), new Uint32Array([seed % 2 ** 32, Math.floor(seed / 2 ** 32)]), words)
  return words[0]!
}
