import { Uniforms } from './uniforms.ts'

const BELOW_ONE = 1 - 2 ** -53

/**
 * `count` uniforms in (0, 1), one in each of `count` equally wide strata, in random order. Streams with different
 * numbers are independent, so that several of them side by side are a Latin hypercube.
 *
 * Source: McKay, Beckman & Conover, Technometrics 21 (1979), 239–245.
 */
export function stratified(count: number, seed: number, stream = 0): Float64Array {
  const uniforms = new Uniforms(seed, [stream])
  const values = Float64Array.from({ length: count }, (_, stratum) =>
    Math.min(BELOW_ONE, (stratum + uniforms.next()) / count),
  )
  for (let i = count - 1; i > 0; i--) {
    const other = uniforms.below(i + 1)
    const value = values[i]!
    values[i] = values[other]!
    values[other] = value
  }
  return values
}
