import { Workspace } from '../kernel/index.ts'
import { type Pmf, partsOf, pmf, product, spacing, spread } from './pmf.ts'

/** A time put on a coarse grid after a wait of 0, 1, 2, … points of its own. */
interface Moved {
  readonly first: number
  readonly byWait: readonly Float64Array[]
  /** The far tail, if all its points are points of the coarse grid: whatever is added to it need be put there only. */
  readonly tail: Pmf | null
}

const known = new WeakMap<Pmf, Map<number, Moved>>()

/**
 * Distribution of the sum of two independent times on a grid `ratio` times as coarse as theirs, shared between its
 * neighbouring points: the same as the sum on their own grid, put on the coarse one. Points of `a` that lie equally far
 * before a coarse point are a row of that grid themselves; with them `b` is convolved there, moved by so far. It is
 * a `ratio`-th of the work, and what is made of `b` is kept for the next `a`.
 */
export function coarseSum(a: Pmf, b: Pmf, ratio: number): Pmf {
  const { first, byWait, tail } = movedOf(b, ratio)
  const parts = partsOf(a.mass)
  const from = Math.floor(a.first / ratio)
  const rowsTo = (length: number) => Math.floor((a.first + length - 1) / ratio) - from + 1
  const rows = rowsTo(a.mass.length)
  const dense = rowsTo(parts.core.length)
  const waitOfTail = parts.tail.length > 0 && spacing === ratio ? (a.first + parts.from) % ratio : null
  const reach = (byWait[0] as Float64Array).length
  const space = Workspace.borrowed()
  const length = rows + reach - 1
  const out = space.take(length + 8)
  const part = space.take(length + 8)
  const row = space.take(rows)
  // Zeros around it, so that no eight sums have to know where it ends.
  const pad = 16
  const values = space.take(reach + 2 * pad) + pad
  const { data, kernel } = space
  for (let wait = 0; wait < ratio; wait++) {
    let last = -1
    let begin = rows
    const most = waitOfTail === null || wait === waitOfTail ? rows : dense
    for (let m = 0; m < most; m++) {
      const i = (from + m) * ratio + wait - a.first
      const mass = i < 0 || i >= a.mass.length ? 0 : (a.mass[i] as number)
      data[row + m] = mass
      if (mass === 0) continue
      last = m
      if (begin === rows) begin = m
    }
    if (last < 0) continue
    data.set(byWait[wait] as Float64Array, values)
    const count = last - begin + 1
    kernel.convolve(part, row + begin, count, values, reach)
    kernel.addScaled(out + begin, part, count + reach - 1, 1)
  }
  const beyond = tail && withTail(a, tail, ratio)
  const end = beyond ? beyond.first + beyond.mass.length - from - first : 0
  const mass = new Float64Array(Math.max(length, end))
  mass.set(data.subarray(out, out + length))
  space.giveBack()
  if (beyond) {
    const at = beyond.first - from - first
    for (let k = 0; k < beyond.mass.length; k++) mass[at + k] = (mass[at + k] as number) + (beyond.mass[k] as number)
  }
  return pmf(from + first, mass)
}

/** The sum with the tail alone: all of the other time is put on the coarse grid once. */
function withTail(a: Pmf, tail: Pmf, ratio: number): Pmf {
  const { first, mass } = spread(a, ratio)
  return { first: first + tail.first, mass: product(mass, tail.mass) }
}

function movedOf(b: Pmf, ratio: number): Moved {
  const byRatio = known.get(b) ?? new Map<number, Moved>()
  known.set(b, byRatio)
  let moved = byRatio.get(ratio)
  if (!moved) {
    moved = allMoved(b, ratio)
    byRatio.set(ratio, moved)
  }
  return moved
}

function allMoved({ first: start, mass: all }: Pmf, ratio: number): Moved {
  const parts = partsOf(all)
  const aligned = parts.tail.length > 0 && spacing === ratio && (start + parts.from) % ratio === 0
  const mass = aligned ? parts.core : all
  const first = Math.floor(start / ratio)
  const length = Math.ceil((start + mass.length - 1 + ratio - 1) / ratio) - first + 1
  const byWait = Array.from({ length: ratio }, () => new Float64Array(length))
  for (let j = 0; j < mass.length; j++) {
    const m = mass[j] as number
    // Most points of a thinned tail are empty.
    if (m === 0) continue
    const place = start + j - first * ratio
    for (let wait = 0; wait < ratio; wait++) {
      const out = byWait[wait] as Float64Array
      const k = Math.floor((place + wait) / ratio)
      const share = (place + wait - k * ratio) / ratio
      out[k] = (out[k] as number) + m * (1 - share)
      if (share > 0) out[k + 1] = (out[k + 1] as number) + m * share
    }
  }
  return { first, byWait, tail: aligned ? { first: (start + parts.from) / ratio, mass: parts.tail } : null }
}
