/** How well observers agree beyond chance. */

/** Two observers' judgements: table[i][j] cases that the first called i and the second j. Source: Cohen, Educational and Psychological Measurement 20 (1960), 37–46. */
export function kappa(table: readonly (readonly number[])[]): { observed: number; expected: number; kappa: number } {
  const sum = (values: readonly number[]) => values.reduce((total, x) => total + x, 0)
  const rows = table.map(sum)
  const columns = table.map((_, j) => sum(table.map((row) => row[j] as number)))
  const all = sum(rows)
  const observed = sum(table.map((row, i) => row[i] as number)) / all
  const expected = sum(rows.map((row, i) => row * (columns[i] as number))) / (all * all)
  return { observed, expected, kappa: (observed - expected) / (1 - expected) }
}

export type Scale = 'nominal' | 'ordinal' | 'interval' | 'ratio'

/**
 * Krippendorff's α, for any number of observers of whom some have not judged some units. 1 is agreement, 0 what chance gives;
 * null where no unit was judged twice or all judged the same.
 *
 * Source: Krippendorff, Computing Krippendorff's Alpha-Reliability (2011).
 *
 * @param units judgements of each unit, by whoever judged it
 */
export function krippendorff(units: readonly (readonly number[])[], scale: Scale): number | null {
  const pairable = units.filter((unit) => unit.length > 1)
  const values = [...new Set(pairable.flat())].sort((a, b) => a - b)
  const counts = values.map((value) => pairable.flat().filter((each) => each === value).length)
  const all = counts.reduce((sum, n) => sum + n, 0)
  const place = new Map(values.map((value, k) => [value, k]))
  const distance = distanceOf(scale, values, counts)
  let observed = 0
  for (const unit of pairable)
    for (const [i, one] of unit.entries())
      for (const [j, other] of unit.entries())
        if (i !== j) observed += distance(place.get(one) as number, place.get(other) as number) / (unit.length - 1)
  let expected = 0
  for (const [c, n] of counts.entries()) for (const [k, m] of counts.entries()) expected += n * m * distance(c, k)
  return expected > 0 ? 1 - ((all - 1) * observed) / expected : null
}

/** Squared difference of two values, by their places among all. */
function distanceOf(scale: Scale, values: readonly number[], counts: readonly number[]) {
  return (c: number, k: number): number => {
    if (c === k) return 0
    const [one, other] = [values[c] as number, values[k] as number]
    switch (scale) {
      case 'nominal':
        return 1
      case 'interval':
        return (one - other) ** 2
      case 'ratio':
        return ((one - other) / (one + other)) ** 2
      case 'ordinal': {
        const [low, high] = c < k ? [c, k] : [k, c]
        const between = counts.slice(low, high + 1).reduce((sum, n) => sum + n, 0)
        return (between - ((counts[low] as number) + (counts[high] as number)) / 2) ** 2
      }
    }
  }
}

export interface Intraclass {
  betweenTargets: number
  withinTargets: number
  betweenJudges: number
  residual: number
  /** Of one judgement and of the mean of all: judges drawn anew for each target, drawn once, and just these. */
  single: { oneWay: number; random: number; fixed: number }
  mean: { oneWay: number; random: number; fixed: number }
}

/** Intraclass correlations of a full table of targets × judges. Source: Shrout & Fleiss, Psychological Bulletin 86 (1979), 420–428. */
export function intraclass(table: readonly (readonly number[])[]): Intraclass {
  const [n, k] = [table.length, (table[0] as number[]).length]
  const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length
  const squares = (values: readonly number[], about: number) => values.reduce((sum, x) => sum + (x - about) ** 2, 0)
  const all = mean(table.flat())
  const targets = k * squares(table.map(mean), all)
  const judges =
    n *
    squares(
      Array.from({ length: k }, (_, j) => mean(table.map((row) => row[j] as number))),
      all,
    )
  const within = squares(table.flat(), all) - targets
  const b = targets / (n - 1)
  const w = within / (n * (k - 1))
  const j = judges / (k - 1)
  const e = (within - judges) / ((n - 1) * (k - 1))
  return {
    betweenTargets: b,
    withinTargets: w,
    betweenJudges: j,
    residual: e,
    single: {
      oneWay: (b - w) / (b + (k - 1) * w),
      random: (b - e) / (b + (k - 1) * e + (k * (j - e)) / n),
      fixed: (b - e) / (b + (k - 1) * e),
    },
    mean: { oneWay: (b - w) / b, random: (b - e) / (b + (j - e) / n), fixed: (b - e) / b },
  }
}
