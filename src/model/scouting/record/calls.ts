/** Matches whose winner was called with at least some chance, and how many of them that side won. */
export interface Calls {
  atLeast: number
  called: number
  came: number
  /** How many would come true on average if the chances hold, and where that lies with 95 % at least. */
  expected: number
  low: number
  high: number
}

/** Chance of each number of successes, of independent chances. */
export function successes(chances: readonly number[]): Float64Array {
  const by = new Float64Array(chances.length + 1)
  by[0] = 1
  for (const [i, p] of chances.entries())
    for (let k = i + 1; k >= 0; k--) by[k] = by[k]! * (1 - p) + (k > 0 ? by[k - 1]! * p : 0)
  return by
}

/** The least and the most that come by chance: not more than `tail` lies beyond on either side. */
export function rangeOf(by: ArrayLike<number>, tail: number): [low: number, high: number] {
  let [low, high] = [0, by.length - 1]
  for (let sum = by[low]!; sum <= tail && low < high; sum += by[low]!) low++
  for (let sum = by[high]!; sum <= tail && high > low; sum += by[high]!) high--
  return [low, high]
}

/** @param calls chance of the side that was given more, and whether it won; a tie is no win */
export function callsOf(calls: readonly { chance: number; won: boolean }[], atLeast: number): Calls {
  const own = calls.filter(({ chance }) => chance >= atLeast)
  const chances = own.map(({ chance }) => chance)
  const [low, high] = rangeOf(successes(chances), 0.025)
  return {
    atLeast,
    called: own.length,
    came: own.filter(({ won }) => won).length,
    expected: chances.reduce((sum, p) => sum + p, 0),
    low,
    high,
  }
}
