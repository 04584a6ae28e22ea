import type { Believed } from './types.ts'

/** Mean, and the 10th and 90th of a hundred, of equally likely numbers. */
export function believedOf(values: Float64Array): Believed {
  const rising = Float64Array.from(values).sort()
  const mean = rising.reduce((sum, own) => sum + own, 0) / rising.length
  const at = (share: number) => {
    const place = share * (rising.length - 1)
    const below = Math.floor(place)
    const [low, high] = [rising[below] as number, rising[Math.min(rising.length - 1, below + 1)] as number]
    return low + (place - below) * (high - low)
  }
  return { mean, low: at(0.1), high: at(0.9) }
}

/** Share of draws in which the first is larger, equals half. */
export function largerIn(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let d = 0; d < a.length; d++) {
    const more = (a[d] as number) - (b[d] as number)
    sum += more > 1e-12 ? 1 : more < -1e-12 ? 0 : 0.5
  }
  return sum / a.length
}
