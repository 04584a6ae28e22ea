/** Probabilities on a grid: `mass[i]` lies on grid point `first + i`. Always normalised, ends trimmed. */
export interface Pmf {
  readonly first: number
  readonly mass: Float64Array
}

/**
 * What is trimmed at each end; it goes to the neighbouring point, so that the sum stays 1. The fast end is kept much
 * further: a plan prefers a chance of 1e-12 points to doing nothing, so that the fastest times decide policies.
 */
const negligible = { fast: 1e-13, slow: 1e-10 }

/** Distributions longer than this have their far tail thinned. */
const long = 400

/**
 * Far tails are kept on a coarser grid: where less than `beyond` of the mass is still to come, only every `every`-th
 * point is used. Each mass is shared between its two neighbours there, so that the mean is kept; the variance grows by
 * less than beyond · (every · step)² / 6, i.e. by 5e-5 s² in all on a grid of 0.01 s.
 */
const thinning = [
  { beyond: 2e-2, every: 10 },
  { beyond: 1e-3, every: 20 },
  { beyond: 1e-5, every: 80 },
]

/** Trim negligible ends and normalise. Takes over the array. */
export function pmf(first: number, mass: Float64Array): Pmf {
  let start = 0
  let end = mass.length
  let lost = 0
  while (start < end - 1 && lost + (mass[start] as number) < negligible.fast) lost += mass[start++] as number
  mass[start] = (mass[start] as number) + lost
  lost = 0
  while (end > start + 1 && lost + (mass[end - 1] as number) < negligible.slow) lost += mass[--end] as number
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
  const coreA = coreOf(a.mass)
  const coreB = coreOf(b.mass)
  if (coreA > coreB) return convolve(b, a)
  if (a.mass.length === 1) return { first: a.first + b.first, mass: b.mass }
  const out = new Float64Array(a.mass.length + b.mass.length - 1)
  const denseB = b.mass.subarray(0, coreB)
  addConvolution(out.subarray(0, coreA + coreB - 1), a.mass.subarray(0, coreA), denseB)
  // The thin tails are few points: each moves the other distribution as a whole.
  for (let i = coreA; i < a.mass.length; i++) if (a.mass[i] !== 0) addScaled(out, i, a.mass[i] as number, denseB)
  const dense = coreA === a.mass.length ? a.mass : a.mass.subarray(0, coreA)
  for (let i = coreB; i < b.mass.length; i++) {
    const m = b.mass[i] as number
    if (m === 0) continue
    addScaled(out, i, m, dense)
    for (let j = coreA; j < a.mass.length; j++)
      if (a.mass[j] !== 0) out[i + j] = (out[i + j] as number) + m * (a.mass[j] as number)
  }
  return thinned(pmf(a.first + b.first, out))
}

/** Length of the front part of a distribution in which there are few gaps. */
function coreOf(mass: Float64Array): number {
  if (mass.length < long) return mass.length
  const widest = thinning[0]?.every ?? 1
  let gap = 0
  for (let i = 0; i < mass.length; i++) {
    gap = mass[i] === 0 ? gap + 1 : 0
    if (gap >= widest - 1) return i - gap + 1
  }
  return mass.length
}

function addScaled(out: Float64Array, at: number, factor: number, mass: Float64Array): void {
  for (let j = 0; j < mass.length; j++) out[at + j] = (out[at + j] as number) + factor * (mass[j] as number)
}

/** The same distribution with its far tail on a coarser grid. */
export function thinned(a: Pmf): Pmf {
  if (a.mass.length < long) return a
  const out = a.mass.slice()
  let tail = 0
  for (let i = out.length - 1; i >= 0; i--) {
    const m = a.mass[i] as number
    const level = thinning.findLast(({ beyond }) => tail < beyond)
    tail += m
    if (!level) break
    const off = (a.first + i) % level.every
    if (off === 0 || i - off < 0 || i - off + level.every >= out.length || m === 0) continue
    out[i] = (out[i] as number) - m
    out[i - off] = (out[i - off] as number) + m * (1 - off / level.every)
    out[i - off + level.every] = (out[i - off + level.every] as number) + (m * off) / level.every
  }
  for (let i = 0; i < out.length; i++) if ((out[i] as number) < 0) out[i] = 0
  return { first: a.first, mass: out }
}

/** out[i + j] += rows[i] · long[j]; four rows at a time, since one load of `out` then serves four products. */
export function addConvolution(out: Float64Array, rows: Float64Array, long: Float64Array): void {
  const n = long.length
  let i = 0
  while (i < rows.length) {
    const s0 = rows[i] as number
    if (s0 === 0) {
      i++
      continue
    }
    const s1 = i + 1 < rows.length ? (rows[i + 1] as number) : 0
    const s2 = i + 2 < rows.length ? (rows[i + 2] as number) : 0
    const s3 = i + 3 < rows.length ? (rows[i + 3] as number) : 0
    if (s1 === 0 && s2 === 0 && s3 === 0) {
      for (let j = 0; j < n; j++) out[i + j] = (out[i + j] as number) + s0 * (long[j] as number)
      i += 4
      continue
    }
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
    // The three rows after the first reach beyond its end; what reaches beyond `out` is zero.
    const end = Math.min(out.length - i - n, 3)
    if (end > 0) out[i + n] = (out[i + n] as number) + s1 * l1 + s2 * l2 + s3 * l3
    if (end > 1) out[i + n + 1] = (out[i + n + 1] as number) + s2 * l1 + s3 * l2
    if (end > 2) out[i + n + 2] = (out[i + n + 2] as number) + s3 * l1
    i += 4
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

/** What lies beyond grid point `limit` is gathered there. */
export function capped(a: Pmf, limit: number): Pmf {
  const last = Math.max(a.first, Math.floor(limit))
  if (a.first + a.mass.length - 1 <= last) return a
  const mass = a.mass.slice(0, last - a.first + 1)
  let beyond = 0
  for (let i = mass.length; i < a.mass.length; i++) beyond += a.mass[i] as number
  mass[mass.length - 1] = (mass[mass.length - 1] as number) + beyond
  return { first: a.first, mass }
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
