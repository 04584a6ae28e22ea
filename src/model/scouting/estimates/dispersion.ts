/** How much counts of one team vary from match to match, against what chance alone would do. */

/** Below so many degrees of freedom the spread says too little, and 1 is taken. */
const fewest = 30
const bounds = { low: 0.05, high: 5 }

/** Counts with their exposures, of one team as it was throughout. */
export type CountGroup = readonly { count: number; exposure: number }[]

/** Pooled variance between the matches of a team over its mean, held in 0.05 … 5. */
export function countDispersion(groups: readonly CountGroup[]): number {
  let [squares, free] = [0, 0]
  for (const group of groups) {
    const exposure = group.reduce((sum, each) => sum + each.exposure, 0)
    const rate = group.reduce((sum, each) => sum + each.count, 0) / exposure
    if (!(rate > 0)) continue
    for (const each of group) squares += (each.count - rate * each.exposure) ** 2 / (rate * each.exposure)
    free += group.length - 1
  }
  return free < fewest ? 1 : Math.min(bounds.high, Math.max(bounds.low, squares / free))
}

/** Most by which shares may vary more than chance alone would let them. */
const mostOfShares = 8

/** The same of shares (goals of a trip, hits of tries): at least 1, since single ones are independent at best. */
export function shareDispersion(groups: readonly (readonly Float64Array[])[]): number {
  let [squares, free] = [0, 0]
  for (const group of groups) {
    if (group.length < 2) continue
    const categories = (group[0] as Float64Array).length
    const totals = new Float64Array(categories)
    let all = 0
    for (const counts of group)
      for (let k = 0; k < categories; k++) {
        totals[k]! += counts[k] as number
        all += counts[k] as number
      }
    const used = totals.filter((total) => total > 0).length
    if (used < 2) continue
    for (const counts of group) {
      const n = counts.reduce((sum, count) => sum + count, 0)
      if (n === 0) continue
      for (let k = 0; k < categories; k++) {
        const expected = (n * (totals[k] as number)) / all
        if (expected > 0) squares += ((counts[k] as number) - expected) ** 2 / expected
      }
    }
    free += (group.filter((counts) => counts.some((count) => count > 0)).length - 1) * (used - 1)
  }
  return free < fewest ? 1 : Math.min(mostOfShares, Math.max(1, squares / free))
}
