import { Workspace } from '../kernel/index.ts'
import { convolveByTransform, sizeFor } from './fourier.ts'

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

/** Points of all far tails lie this far apart, or a multiple of it up to the coarsest. */
export const spacing = 10
const coarsest = 80

/** Trim negligible ends and normalise. Takes over the array. */
export function pmf(first: number, mass: Float64Array): Pmf {
  const kept = trimmed(first, mass)
  let total = 0
  for (let i = 0; i < kept.mass.length; i++) total += kept.mass[i] as number
  const scale = 1 / total
  if (Math.abs(total - 1) > 1e-15)
    for (let i = 0; i < kept.mass.length; i++) kept.mass[i] = (kept.mass[i] as number) * scale
  return kept
}

/** Gathers negligible ends on their neighbours; a part of the array comes back. */
function trimmed(first: number, mass: Float64Array): Pmf {
  let start = 0
  let end = mass.length
  let lost = 0
  while (start < end - 1 && lost + (mass[start] as number) < negligible.fast) lost += mass[start++] as number
  mass[start] = (mass[start] as number) + lost
  lost = 0
  while (end > start + 1 && lost + (mass[end - 1] as number) < negligible.slow) lost += mass[--end] as number
  mass[end - 1] = (mass[end - 1] as number) + lost
  return { first: first + start, mass: mass.subarray(start, end) }
}

/** All mass on one grid point. */
export const point = (at: number): Pmf => ({ first: at, mass: Float64Array.of(1) })

/** Distribution of the sum of two independent times. */
export function convolve(a: Pmf, b: Pmf): Pmf {
  if (a.mass.length === 1) return { first: a.first + b.first, mass: b.mass }
  if (b.mass.length === 1) return { first: a.first + b.first, mass: a.mass }
  const partsA = partsOf(a.mass)
  const partsB = partsOf(b.mass)
  const out = zeros(a.mass.length + b.mass.length + 2 * spacing)
  out.set(product(partsA.core, partsB.core))
  // Far tails are few points on a wider grid: on it they meet the other distribution.
  if (partsA.tail.length > 0) addSpaced(out, partsA.from + partsB.origin, product(partsA.tail, partsB.all()))
  if (partsB.tail.length > 0) {
    const core = gathered(partsA.core, partsA.origin)
    addSpaced(out, partsA.origin + partsB.from, product(core, partsB.tail))
  }
  const sum = trimmed(a.first + b.first, out)
  return sum.mass.length < long ? { first: sum.first, mass: sum.mass.slice() } : thinned(sum)
}

let scratch = new Float64Array(0)

/** Zeros to work on until the next call. */
function zeros(length: number): Float64Array {
  if (scratch.length < length) scratch = new Float64Array(2 * length)
  return scratch.subarray(0, length).fill(0)
}

/** The dense front of a distribution, and its thinned tail as every tenth point from `from`, if it has one. */
interface Parts {
  readonly core: Float64Array
  readonly from: number
  readonly tail: Float64Array
  /** Where a grid of the tail's spacing and alignment begins: at index 0 or just before. */
  readonly origin: number
  /** All of it on that grid. */
  all(): Float64Array
}

const partsKnown = new WeakMap<Float64Array, Parts>()

/** A distribution's masses taken apart, once. */
export function partsOf(mass: Float64Array): Parts {
  let parts = partsKnown.get(mass)
  if (!parts) {
    parts = takenApart(mass)
    partsKnown.set(mass, parts)
  }
  return parts
}

function takenApart(mass: Float64Array): Parts {
  const core = coreOf(mass)
  let from = core
  while (from < mass.length && mass[from] === 0) from++
  const tail = core === mass.length ? null : tailOf(mass, from)
  if (!tail) return { core: mass, from: 0, tail: new Float64Array(0), origin: 0, all: () => gathered(mass, 0) }
  const dense = mass.subarray(0, core)
  const origin = (from % spacing) - (from % spacing === 0 ? 0 : spacing)
  let all: Float64Array | null = null
  const whole = () => {
    const out = new Float64Array((from - origin) / spacing + tail.length)
    out.set(gathered(dense, origin))
    for (let k = 0; k < tail.length; k++) {
      const place = (from - origin) / spacing + k
      out[place] = (out[place] as number) + (tail[k] as number)
    }
    return out
  }
  return { core: dense, from, tail, origin, all: () => (all ??= whole()) }
}

/** Every tenth point from `from` on; null where there is mass between them, as when tails of different alignments were mixed. */
function tailOf(mass: Float64Array, from: number): Float64Array | null {
  const tail = new Float64Array(Math.floor((mass.length - 1 - from) / spacing) + 1)
  let next = from
  for (let i = from; i < mass.length; i++) {
    if (i === next) {
      tail[(i - from) / spacing] = mass[i] as number
      next += spacing
    } else if (mass[i] !== 0) return null
  }
  return tail
}

/** The same masses on every tenth point from `origin` on, shared between neighbours so that the mean is kept. */
function gathered(mass: Float64Array, origin: number): Float64Array {
  const out = new Float64Array(Math.ceil((mass.length - 1 - origin) / spacing) + 1)
  for (let i = 0; i < mass.length; i++) {
    const m = mass[i] as number
    if (m === 0) continue
    const place = i - origin
    const k = Math.floor(place / spacing)
    const share = (place - k * spacing) / spacing
    out[k] = (out[k] as number) + m * (1 - share)
    if (share > 0) out[k + 1] = (out[k + 1] as number) + m * share
  }
  return out
}

function addSpaced(out: Float64Array, at: number, mass: Float64Array): void {
  for (let k = 0; k < mass.length; k++) out[at + k * spacing] = (out[at + k * spacing] as number) + (mass[k] as number)
}

/** Σ over i + j = k of a[i] · b[j], by whichever way is quicker. */
export function product(a: Float64Array, b: Float64Array): Float64Array {
  const [rows, long] = a.length < b.length ? [a, b] : [b, a]
  const length = a.length + b.length - 1
  const size = sizeFor(length)
  return rows.length * length > plainly * size * Math.log2(size) ? convolveByTransform(a, b) : summed(rows, long)
}

/** So many multiply-adds of the plain way take as long as one step of the transform (measured). */
const plainly = 20

function summed(rows: Float64Array, long: Float64Array): Float64Array {
  const length = rows.length + long.length - 1
  const space = Workspace.borrowed()
  // Zeros around the longer one, so that no eight sums have to know where it ends.
  const pad = 16
  const padded = space.take(long.length + 2 * pad) + pad
  space.data.set(long, padded)
  const factors = space.copied(rows)
  const out = space.take(length + 8)
  space.kernel.convolve(out, factors, rows.length, padded, long.length)
  const sums = space.data.slice(out, out + length)
  space.giveBack()
  return sums
}

/** Length of the front part of a distribution in which there are few gaps. */
function coreOf(mass: Float64Array): number {
  if (mass.length < long) return mass.length
  let gap = 0
  for (let i = 0; i < mass.length; i++) {
    gap = mass[i] === 0 ? gap + 1 : 0
    if (gap >= spacing - 1) return i - gap + 1
  }
  return mass.length
}

/** The same distribution with its far tail on a coarser grid. */
export function thinned(a: Pmf): Pmf {
  if (a.mass.length < long) return a
  const out = new Float64Array(a.mass.length + coarsest)
  let tail = 0
  let last = a.mass.length - 1
  for (let l = thinning.length - 1; l >= 0; l--) {
    const { beyond, every } = thinning[l] as (typeof thinning)[number]
    for (; last >= 0 && tail < beyond; last--) {
      const m = a.mass[last] as number
      if (m === 0) continue
      tail += m
      const off = (a.first + last) % every
      const low = last - off
      if (off === 0 || low < 0) out[last] = (out[last] as number) + m
      else {
        out[low] = (out[low] as number) + m * (1 - off / every)
        out[low + every] = (out[low + every] as number) + (m * off) / every
      }
    }
  }
  for (let i = 0; i <= last; i++) out[i] = (out[i] as number) + (a.mass[i] as number)
  let end = out.length
  while (out[end - 1] === 0) end--
  return { first: a.first, mass: out.subarray(0, end) }
}

/** Distribution of the later of two independent times: the product of their cdfs. */
export function later(a: Pmf, b: Pmf): Pmf {
  const [long, short] = endOf(a) < endOf(b) ? [b, a] : [a, b]
  const end = endOf(short)
  if (end <= long.first + 1) return long
  const first = Math.max(a.first, b.first)
  // Where the short one is over for certain, the masses are those of the long one.
  const out = long.mass.slice(first - long.first)
  let belowLong = before(long, first)
  let belowShort = before(short, first)
  let last = 0
  for (let k = first; k < end; k++) {
    belowLong += long.mass[k - long.first] as number
    belowShort += short.mass[k - short.first] as number
    const now = belowLong * belowShort
    out[k - first] = Math.max(0, now - last)
    last = now
  }
  return pmf(first, out)
}

const endOf = ({ first, mass }: Pmf): number => first + mass.length

/** P(time < k). */
function before({ first, mass }: Pmf, k: number): number {
  let sum = 0
  for (let i = 0; i < k - first && i < mass.length; i++) sum += mass[i] as number
  return sum
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
 * The same distribution with every value moved `by` grid points and multiplied by `factor`, on another grid `ratio` times as
 * coarse (grid points of the new grid = (old points + by) · factor / ratio), shared between neighbours so that the mean is kept.
 */
export function regrid(a: Pmf, ratio: number, factor = 1, by = 0): Pmf {
  const { first, mass } = spread(a, ratio, factor, by)
  return pmf(first, mass)
}

/** The same with its ends as they come. */
export function spread(a: Pmf, ratio: number, factor = 1, by = 0): Pmf {
  const scale = factor / ratio
  const start = a.first + by
  const first = Math.floor(start * scale + 1e-9)
  const out = new Float64Array(Math.ceil((start + a.mass.length) * scale) - first + 2)
  const put = (mass: Float64Array, from: number, apart: number) => {
    for (let i = 0; i < mass.length; i++) {
      const m = mass[i] as number
      if (m === 0) continue
      const place = (from + i * apart) * scale - first
      const k = (place + 1e-9) | 0
      const share = place > k ? place - k : 0
      out[k] = (out[k] as number) + m * (1 - share)
      out[k + 1] = (out[k + 1] as number) + m * share
    }
  }
  const { core, from, tail } = partsOf(a.mass)
  put(core, start, 1)
  put(tail, start + from, spacing)
  return { first, mass: out }
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
