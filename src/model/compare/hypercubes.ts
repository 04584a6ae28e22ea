import { inputBelief } from './inputBelief.ts'
import type { Input } from './types.ts'

export const hypercubes = 8
export const drawsPerHypercube = 250
/** Draws of a belief: 8 independent Latin hypercubes of 250. */
export const beliefSize = hypercubes * drawsPerHypercube

/** A stream of uniforms in (0, 1), one for each hypercube and input, so that any part of the draws can be made alone. */
export type UniformStream = (hypercube: number, input: number) => () => number

/**
 * Levels in (0, 1) of one input in one Latin hypercube: each of the equal strata of (0, 1) once, in random order and at
 * a random place inside (McKay, Beckman & Conover, Technometrics 21, 1979).
 */
export function latinLevels(count: number, uniform: () => number): Float64Array {
  const levels = Float64Array.from({ length: count }, (_, stratum) => (stratum + uniform()) / count)
  for (let last = count - 1; last > 0; last--) {
    const other = Math.floor(uniform() * (last + 1))
    const kept = levels[last] as number
    levels[last] = levels[other] as number
    levels[other] = kept
  }
  return levels
}

/** The inputs' values in the draws from ≤ k < to of a belief; the same draws, however they are cut into parts. */
export function beliefValues(inputs: readonly Input[], streams: UniformStream, part: { from: number; to: number }) {
  const rows = Array.from({ length: part.to - part.from }, () => new Array<number>(inputs.length))
  const firstCube = Math.floor(part.from / drawsPerHypercube)
  const lastCube = Math.floor((part.to - 1) / drawsPerHypercube)
  inputs.forEach((input, index) => {
    const belief = inputBelief(input)
    for (let cube = firstCube; cube <= lastCube; cube++) {
      const levels = latinLevels(drawsPerHypercube, streams(cube, index))
      const start = cube * drawsPerHypercube
      const end = Math.min(part.to, start + drawsPerHypercube)
      for (let draw = Math.max(part.from, start); draw < end; draw++) {
        ;(rows[draw - part.from] as number[])[index] = belief.quantile(levels[draw - start] as number)
      }
    }
  })
  return rows
}
