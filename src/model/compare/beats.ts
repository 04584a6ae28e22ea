/** A distribution over points: [points, probability], rising. */
export type Lattice = readonly (readonly [number, number])[]

/** Points that differ by less than this are the same points, computed in another order. */
const same = 1e-9

/**
 * The chance that one draw of `own` is more than one of `other`, independent of it; a tie counts half.
 * Exact: one pass over both lattices, each taken as a whole of 1, so that beats(a, b) + beats(b, a) = 1.
 */
export function beats(own: Lattice, other: Lattice): number {
  let below = 0
  let at = 0
  let total = 0
  for (const [points, probability] of own) {
    while (at < other.length && (other[at]?.[0] as number) < points - same) below += other[at++]?.[1] as number
    let tied = 0
    for (let k = at; k < other.length && (other[k]?.[0] as number) <= points + same; k++)
      tied += other[k]?.[1] as number
    total += probability * (below + tied / 2)
  }
  return total / (massOf(own) * massOf(other))
}

const massOf = (lattice: Lattice): number => lattice.reduce((sum, [, probability]) => sum + probability, 0)
