export interface Axis {
  from: number
  to: number
  /** Points in the search and in the answer. */
  search: number
  points: number
}

/** Points in the middles of the cells of a product grid with their weights, which sum to 1; the last axis runs fastest. */
export interface Grid {
  axes: Float64Array[]
  weights: Float64Array
}

/** Of an axis, what is this far below its highest place (as a share) is left out. */
const negligible = 1e-5
const mostSearches = 8

/**
 * The posterior of a few hyperparameters on a grid that covers it: a search on few points narrows every axis to where the
 * marginal is not negligible, one step to either side, until it narrows no more.
 *
 * @param logDensity at a point, up to a constant; called with the last axis running fastest, and with one array that is reused
 */
export function posteriorGrid(axes: readonly Axis[], logDensity: (at: Float64Array) => number): Grid {
  let ranges = axes.map(({ from, to }) => ({ from, to }))
  for (let turn = 0; turn < mostSearches; turn++) {
    const found = gridOver(
      ranges.map((range, a) => ({ ...range, points: (axes[a] as Axis).search })),
      logDensity,
    )
    const narrowed = ranges.map((range, a) => narrow(found, a, range) ?? range)
    const shrinks = narrowed.some(
      (range, a) => range.to - range.from < 0.7 * ((ranges[a] as Axis).to - (ranges[a] as Axis).from),
    )
    ranges = narrowed
    if (!shrinks) break
  }
  return gridOver(
    ranges.map((range, a) => ({ ...range, points: (axes[a] as Axis).points })),
    logDensity,
  )
}

function gridOver(
  ranges: readonly { from: number; to: number; points: number }[],
  logDensity: (at: Float64Array) => number,
): Grid {
  const axes = ranges.map(({ from, to, points }) =>
    Float64Array.from({ length: points }, (_, i) => from + ((to - from) * (i + 0.5)) / points),
  )
  const count = axes.reduce((product, { length }) => product * length, 1)
  const weights = new Float64Array(count)
  const at = new Float64Array(axes.length)
  let highest = Number.NEGATIVE_INFINITY
  for (let k = 0; k < count; k++) {
    let rest = k
    for (let a = axes.length - 1; a >= 0; a--) {
      const axis = axes[a] as Float64Array
      at[a] = axis[rest % axis.length] as number
      rest = Math.floor(rest / axis.length)
    }
    const density = logDensity(at)
    weights[k] = density
    if (density > highest) highest = density
  }
  let sum = 0
  for (let k = 0; k < count; k++) sum += weights[k] = Math.exp((weights[k] as number) - highest)
  for (let k = 0; k < count; k++) weights[k] = (weights[k] as number) / sum
  return { axes, weights }
}

/** Weights of one axis, the others summed over. */
export function marginal({ axes, weights }: Grid, a: number): Float64Array {
  const own = (axes[a] as Float64Array).length
  const inner = axes.slice(a + 1).reduce((product, { length }) => product * length, 1)
  const sums = new Float64Array(own)
  for (let k = 0; k < weights.length; k++) sums[Math.floor(k / inner) % own]! += weights[k] as number
  return sums
}

function narrow(
  grid: Grid,
  a: number,
  { from, to }: { from: number; to: number },
): { from: number; to: number } | null {
  const sums = marginal(grid, a)
  const highest = Math.max(...sums)
  const first = sums.findIndex((sum) => sum > negligible * highest)
  const last = sums.findLastIndex((sum) => sum > negligible * highest)
  if (first < 0) return null
  const step = (to - from) / sums.length
  return { from: from + Math.max(0, first - 1) * step, to: from + Math.min(sums.length, last + 2) * step }
}

/** Which point of a grid a uniform number stands for. */
export function picker(grid: Grid): (u: number) => number {
  const pick = cellPicker(grid)
  return (u) => pick(u).cell
}

/** The same, and where within the cell: three shares of its sides, uniform and hardly depending on each other. */
export function cellPicker({
  weights,
}: Grid): (u: number) => { cell: number; within: readonly [number, number, number] } {
  const sums = new Float64Array(weights.length)
  let sum = 0
  for (let k = 0; k < weights.length; k++) sums[k] = sum += weights[k] as number
  return (u) => {
    let low = 0
    let high = sums.length - 1
    while (low < high) {
      const middle = (low + high) >> 1
      if ((sums[middle] as number) < u * sum) low = middle + 1
      else high = middle
    }
    const rest = ((sums[low] as number) - u * sum) / (weights[low] as number)
    return { cell: low, within: [rest, (rest * 9973) % 1, (rest * 99_991) % 1] }
  }
}

/** ln of a normal density, without its constant. */
export const logNormal = (x: number, { mean, sd }: { mean: number; sd: number }): number =>
  -0.5 * ((x - mean) / sd) ** 2
