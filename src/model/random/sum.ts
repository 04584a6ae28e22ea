/**
 * The sum of numbers, compensated for rounding: exact to a few units in the last place even where large terms cancel.
 *
 * Source: Neumaier, ZAMM 54 (1974), 39–51.
 *
 * @example compensatedSum([1, 1e100, 1, -1e100]) // 2
 */
export function compensatedSum(values: Iterable<number>): number {
  let sum = 0
  let lost = 0
  for (const value of values) {
    const next = sum + value
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum
    sum = next
  }
  return sum + lost
}
