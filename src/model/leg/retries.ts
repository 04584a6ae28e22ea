import { geometricSum } from './fourier.ts'
import { type Pmf, pmf, thinned } from './pmf.ts'

/** Retries are counted up to this many. */
const most = 20

/** What fewer legs than this reach is of no interest. */
const negligible = 1e-12

/**
 * The time of min(K, 20) retries, K geometric: P(K = k) = success · (1 − success)^k. `one` is the time of one retry.
 * With z its transform and q = 1 − success, the transform is success · (1 + qz + … + (qz)^19) + (qz)^20, summed in
 * closed form; the rows are long enough for as many retries as can be expected, so that nothing comes round again.
 */
export function retriesOf(success: number, one: Pmf): Pmf {
  const enough = success > 0 ? Math.ceil(Math.log(negligible) / Math.log(1 - success)) : most
  const last = Math.min(most, enough)
  const longest = last * (one.first + one.mass.length - 1)
  const row = new Float64Array(one.first + one.mass.length)
  row.set(one.mass, one.first)
  return thinned(pmf(0, geometricSum(row, success, most, longest + 1)))
}
