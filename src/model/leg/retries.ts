import { Workspace } from '../kernel/index.ts'
import { geometricSum } from './fourier.ts'
import { type Pmf, pmf, thinned } from './pmf.ts'

/** Retries are counted up to this many. */
const most = 20

/** What fewer legs than this reach is of no interest. */
const negligible = 1e-12

/** Chance of more retries than are counted, or of more time than is kept, below which it goes to the last point. */
const rest = 5e-11

/** The recursion finds as many points at once as the quickest retry has; with fewer it is slower than the transform. */
const quick = 32

/**
 * The time of min(K, 20) retries, K geometric: P(K = k) = success · (1 − success)^k. `one` is the time of one retry.
 */
export function retriesOf(success: number, one: Pmf): Pmf {
  const endless = (1 - success) ** most < rest && one.first >= quick
  return thinned(pmf(0, endless ? recursive(success, one) : byTransform(success, one)))
}

/**
 * With any number of retries the distribution g solves g(n) = success · [n = 0] + (1 − success) · Σ_j one(j) · g(n − j), which
 * gives as many points at once as the quickest retry has grid points. (Panjer, ASTIN Bulletin 12(1), 1981, for the
 * geometric case.)
 */
function recursive(success: number, one: Pmf): Float64Array {
  const space = Workspace.borrowed()
  const { first, mass } = one
  const filter = space.copied(mass.map((m) => (1 - success) * m))
  const enough = Math.ceil(Math.log(negligible) / Math.log(1 - success))
  const longest = Math.min(most, enough) * (first + mass.length)
  const before = first + mass.length
  const start = space.take(before + longest + first + 8) + before
  const { data } = space
  data[start] = success
  let left = 1 - success
  let n = 1
  for (; n < longest && left > rest; n += first) {
    // The first `first` points after 0 and every later stretch look back to finished points only.
    space.kernel.correlate(start + n, first, filter, mass.length, start + n - first, -1)
    for (let i = n; i < n + first; i++) left -= data[start + i] as number
  }
  const out = data.slice(start, start + n)
  out[n - 1] = (out[n - 1] as number) + Math.max(0, left)
  space.giveBack()
  return out
}

/**
 * With z the transform of `one` and q = 1 − success, the transform is success · (1 + qz + … + (qz)^19) + (qz)^20; the rows
 * are long enough for as many retries as can be expected, so that nothing comes round again.
 */
function byTransform(success: number, one: Pmf): Float64Array {
  const enough = success > 0 ? Math.ceil(Math.log(negligible) / Math.log(1 - success)) : most
  const longest = Math.min(most, enough) * (one.first + one.mass.length - 1)
  const row = new Float64Array(one.first + one.mass.length)
  row.set(one.mass, one.first)
  return geometricSum(row, success, most, longest + 1)
}
