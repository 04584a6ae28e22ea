import { stratified } from '../random/index.ts'
import { inputBelief } from './inputBelief.ts'
import type { Input } from './types.ts'

export const hypercubes = 8
export const drawsPerHypercube = 250
/** Draws of a belief: 8 independent Latin hypercubes of 250. */
export const beliefSize = hypercubes * drawsPerHypercube

/**
 * The inputs' values in the draws from ≤ k < to of a belief: the same draws, however they are cut into parts. An input's
 * draws depend on the seed and its place alone, so that one more input at the end leaves the others as they were.
 */
export function beliefValues(
  inputs: readonly Input[],
  { seed, from, to }: { seed: number; from: number; to: number },
): number[][] {
  const rows = Array.from({ length: to - from }, () => new Array<number>(inputs.length))
  const firstCube = Math.floor(from / drawsPerHypercube)
  const lastCube = Math.floor((to - 1) / drawsPerHypercube)
  inputs.forEach((input, index) => {
    const belief = inputBelief(input)
    for (let cube = firstCube; cube <= lastCube; cube++) {
      const levels = stratified(drawsPerHypercube, seed, index * hypercubes + cube)
      const start = cube * drawsPerHypercube
      const end = Math.min(to, start + drawsPerHypercube)
      for (let draw = Math.max(from, start); draw < end; draw++) {
        rows[draw - from]![index] = belief.quantile(levels[draw - start]!)
      }
    }
  })
  return rows
}
