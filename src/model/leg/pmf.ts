/** Probabilities on a grid: `mass[i]` lies on grid point `first + i`. Always normalised, ends trimmed. */
export interface Pmf {
  readonly first: number
  readonly mass: Float64Array
}

/** What is trimmed at each end; it goes to the neighbouring point, so that the sum stays 1. */
const negligible = 1e-12

/** Trim negligible ends and normalise. Takes over the array. */
export function pmf(first: number, mass: Float64Array): Pmf {
  let start = 0
  let end = mass.length
  let lost = 0
  while (start < end - 1 && lost + (mass[start] as number) < negligible) lost += mass[start++] as number
  mass[start] = (mass[start] as number) + lost
  lost = 0
  while (end > start + 1 && lost + (mass[end - 1] as number) < negligible) lost += mass[--end] as number
  mass[end - 1] = (mass[end - 1] as number) + lost
  const kept = mass.subarray(start, end)
  let total = 0
  for (let i = 0; i < kept.length; i++) total += kept[i] as number
  if (Math.abs(total - 1) > 1e-15) for (let i = 0; i < kept.length; i++) kept[i] = (kept[i] as number) / total
  return { first: first + start, mass: kept }
}

/** All mass on one grid point. */
export const point = (at: number): Pmf => ({ first: at, mass: Float64Array.of(1) })

/** Distribution of the sum of two independent times. */
export function convolve(a: Pmf, b: Pmf): Pmf {
  if (a.mass.length > b.mass.length) return convolve(b, a)
  const short = a.mass
  const long = b.mass
  if (short.length === 1) return { first: a.first + b.first, mass: long }
  const out = new Float64Array(short.length + long.length - 1)
  addConvolution(out, short, long)
  return pmf(a.first + b.first, out)
}

/** out[i + j] += short[i] · long[j]; four rows at a time, since one load of `out` then serves four products. */
export function addConvolution(out: Float64Array, short: Float64Array, long: Float64Array): void {
  const n = long.length
  let i = 0
  for (; i + 3 < short.length; i += 4) {
    const s0 = short[i] as number
    const s1 = short[i + 1] as number
    const s2 = short[i + 2] as number
    const s3 = short[i + 3] as number
    if (s0 === 0 && s1 === 0 && s2 === 0 && s3 === 0) continue
    let l1 = 0
    let l2 = 0
    let l3 = 0
    for (let j = 0; j < n; j++) {
      const l0 = long[j] as number
      out[i + j] = (out[i + j] as number) + s0 * l0 + s1 * l1 + s2 * l2 + s3 * l3
      l3 = l2
      l2 = l1
      l1 = l0
    }
    out[i + n] = (out[i + n] as number) + s1 * l1 + s2 * l2 + s3 * l3
    out[i + n + 1] = (out[i + n + 1] as number) + s2 * l1 + s3 * l2
    out[i + n + 2] = (out[i + n + 2] as number) + s3 * l1
  }
  for (; i < short.length; i++) {
    const s = short[i] as number
    if (s === 0) continue
    for (let j = 0; j < n; j++) out[i + j] = (out[i + j] as number) + s * (long[j] as number)
  }
}

/** Distribution of the later of two independent times: the product of their cdfs. */
export function later(a: Pmf, b: Pmf): Pmf {
  const first = Math.max(a.first, b.first)
  const end = Math.max(a.first + a.mass.length, b.first + b.mass.length)
  const out = new Float64Array(end - first)
  let belowA = 0
  let belowB = 0
  for (let k = a.first; k < first; k++) belowA += a.mass[k - a.first] ?? 0
  for (let k = b.first; k < first; k++) belowB += b.mass[k - b.first] ?? 0
  let before = 0
  for (let k = first; k < end; k++) {
    belowA += a.mass[k - a.first] ?? 0
    belowB += b.mass[k - b.first] ?? 0
    const now = belowA * belowB
    out[k - first] = Math.max(0, now - before)
    before = now
  }
  return pmf(first, out)
}

/** Distribution of max(time, at): what lies before `at` is gathered there. */
export function notBefore(a: Pmf, at: number): Pmf {
  if (at <= a.first) return a
  const last = a.first + a.mass.length - 1
  if (at >= last) return point(at)
  const out = a.mass.slice(at - a.first)
  let gathered = 0
  for (let i = 0; i < at - a.first; i++) gathered += a.mass[i] as number
  out[0] = (out[0] as number) + gathered
  return { first: at, mass: out }
}

/** Weighted mixture; the weights sum to 1. */
export function mixture(parts: readonly { weight: number; of: Pmf }[]): Pmf {
  let first = Number.POSITIVE_INFINITY
  let end = 0
  for (const { of } of parts) {
    first = Math.min(first, of.first)
    end = Math.max(end, of.first + of.mass.length)
  }
  const out = new Float64Array(end - first)
  for (const { weight, of } of parts) {
    const offset = of.first - first
    for (let i = 0; i < of.mass.length; i++)
      out[offset + i] = (out[offset + i] as number) + weight * (of.mass[i] as number)
  }
  return pmf(first, out)
}

/**
 * The same distribution with every value multiplied by `factor`, on another grid `ratio` times as coarse
 * (grid points of the new grid = old points · factor / ratio), shared between neighbours so that the mean is kept.
 */
export function regrid(a: Pmf, ratio: number, factor = 1): Pmf {
  const scale = factor / ratio
  const first = Math.floor(a.first * scale)
  const out = new Float64Array(Math.ceil((a.first + a.mass.length) * scale) - first + 2)
  for (let i = 0; i < a.mass.length; i++) {
    const place = (a.first + i) * scale - first
    const k = Math.floor(place + 1e-9)
    const share = Math.max(0, place - k)
    const m = a.mass[i] as number
    out[k] = (out[k] as number) + m * (1 - share)
    out[k + 1] = (out[k + 1] as number) + m * share
  }
  return pmf(first, out)
}

/** What would fall on grid point 0 (or before) goes to point 1: a leg takes time. */
export function notAtOnce(a: Pmf): Pmf {
  return a.first >= 1 ? a : notBefore(a, 1)
}

/** Every value moved by a real number of grid steps, not below 0, shared between neighbours. */
export function shift(a: Pmf, steps: number): Pmf {
  const whole = Math.floor(steps + 1e-9)
  const share = Math.max(0, steps - whole)
  const moved =
    share < 1e-9
      ? { first: a.first + whole, mass: a.mass }
      : convolve(a, { first: whole, mass: Float64Array.of(1 - share, share) })
  return notBefore(moved, 0)
}

/** Mean in grid steps. */
export function meanOf(a: Pmf): number {
  let sum = 0
  for (let i = 0; i < a.mass.length; i++) sum += i * (a.mass[i] as number)
  return a.first + sum
}

/** Variance in squared grid steps. */
export function varianceOf(a: Pmf): number {
  const mean = meanOf(a) - a.first
  let sum = 0
  for (let i = 0; i < a.mass.length; i++) sum += (i - mean) ** 2 * (a.mass[i] as number)
  return sum
}

/** Least grid point that a share p of the mass does not exceed. */
export function quantileOf(a: Pmf, p: number): number {
  let sum = 0
  for (let i = 0; i < a.mass.length; i++) {
    sum += a.mass[i] as number
    if (sum >= p - 1e-12) return a.first + i
  }
  return a.first + a.mass.length - 1
}
