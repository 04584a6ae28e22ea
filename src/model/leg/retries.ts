import { convolve, mixture, type Pmf, pmf, point, thinned } from './pmf.ts'

/** Retries are counted up to this many. */
const most = 20

/** What fewer legs than this reach is lumped on the count or time before it. */
const negligible = 1e-11

/**
 * The time of min(K, 20) retries, K geometric: P(K = k) = success · (1 − success)^k.
 * `one` is the distribution of one retry.
 */
export function retriesOf(success: number, one: Pmf): Pmf {
  return (1 - success) ** (most + 1) < negligible && one.first > 0 ? unbounded(success, one) : counted(success, one)
}

/**
 * Where a twentieth retry is out of the question, the sum R obeys R = success · [0] + (1 − success) · (one ⊕ R), solved
 * forward in time. Source: Panjer's recursion for a geometric count, ASTIN Bulletin 12:22–26, 1981.
 */
function unbounded(success: number, one: Pmf): Pmf {
  const { first, mass } = one
  const longest = most * (first + mass.length)
  const out = new Float64Array(longest + 1)
  out[0] = success
  let reached = success
  let end = 0
  for (let k = 1; k <= longest && reached < 1 - negligible; k++) {
    let sum = 0
    const count = Math.min(mass.length, k - first + 1)
    for (let j = 0; j < count; j++) sum += (mass[j] as number) * (out[k - first - j] as number)
    out[k] = (1 - success) * sum
    reached += out[k] as number
    end = k
  }
  return thinned(pmf(0, out.slice(0, end + 1)))
}

function counted(success: number, one: Pmf): Pmf {
  const enough = success > 0 ? Math.ceil(Math.log(negligible) / Math.log(1 - success)) : most
  const last = Math.min(most, enough)
  const parts: { weight: number; of: Pmf }[] = []
  let sum = point(0)
  let reached = 1
  for (let k = 0; k <= last; k++) {
    parts.push({ weight: k === last ? reached : reached * success, of: sum })
    reached *= 1 - success
    if (k < last) sum = k === 0 ? one : convolve(sum, one)
  }
  return thinned(mixture(parts))
}
