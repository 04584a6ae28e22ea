import { brent } from '../../compare/brent.ts'

/**
 * Where a rising function comes to 0 between two numbers, to about 1e-14 of the upper one. The function is at most 0 at the
 * lower and at least 0 at the upper end.
 */
export function risingRoot(f: (x: number) => number, low: number, high: number): number {
  const [valueLow, valueHigh] = [f(low), f(high)]
  if (valueLow >= 0) return low
  if (valueHigh <= 0) return high
  return brent(f, { low, high, valueLow, valueHigh }, 1e-14 * Math.max(Math.abs(low), Math.abs(high))).at
}
