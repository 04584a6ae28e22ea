/** Σ mass[start + i] for i = 0 … count − 1. */
export function sum(mass: Float64Array, start: number, count: number): number {
  let total = 0
  for (let i = 0; i < count; i++) total += mass[start + i] as number
  return total
}

/** Σ mass[start + i] · weights[at + i] for i = 0 … count − 1. */
export function weighted(mass: Float64Array, start: number, at: number, count: number, weights: Float64Array): number {
  let total = 0
  for (let i = 0; i < count; i++) total += (mass[start + i] as number) * (weights[at + i] as number)
  return total
}
