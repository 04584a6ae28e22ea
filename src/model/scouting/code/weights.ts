import { philox } from '../../random/index.ts'

/** With which weight each part of a message is in the mixture with this index: the same for who shows and who reads. */
export function weights(id: number, index: number, parts: number): Uint8Array {
  const factors = new Uint8Array(parts)
  for (let at = 0; at < parts; at += 16) {
    const words = philox([index, at, 0, 0], [id, 0])
    for (let byte = at; byte < Math.min(parts, at + 16); byte++)
      factors[byte] = words[(byte - at) >> 2]! >>> (8 * (byte & 3))
  }
  return factors
}

/** The weights of a frame, its own part alone for one of the first. */
export function weightsOf(frame: { id: number; index: number }, parts: number): Uint8Array {
  if (frame.index >= parts) return weights(frame.id, frame.index, parts)
  const factors = new Uint8Array(parts)
  factors[frame.index] = 1
  return factors
}
