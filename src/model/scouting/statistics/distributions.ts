import betainc from '@stdlib/math-base-special-betainc'
import gammainc from '@stdlib/math-base-special-gammainc'
import betaincinv from '@stdlib/math-base-special-kernel-betaincinv'
import { logChoose, logGamma } from './logGamma.ts'
import { normalQuantile } from './normal.ts'

/** Gamma by shape and rate. */
export const gammaCdf = (x: number, shape: number, rate: number): number =>
  x <= 0 ? 0 : gammainc(rate * x, shape, true, false)

/**
 * Newton's steps on the distribution function, held between bounds that close in, from where Wilson & Hilferty (1931) put it.
 */
export function gammaQuantile(p: number, shape: number, rate: number): number {
  const root = 1 - 1 / (9 * shape) + normalQuantile(p) / (3 * Math.sqrt(shape))
  let x = root > 0.1 ? shape * root ** 3 : Math.exp((Math.log(p) + logGamma(shape + 1)) / shape)
  let [low, high] = [0, Number.POSITIVE_INFINITY]
  for (let turn = 0; turn < 100; turn++) {
    const off = gammaCdf(x, shape, 1) - p
    if (off > 0) high = x
    else low = x
    const density = Math.exp((shape - 1) * Math.log(x) - x - logGamma(shape))
    const next = x - off / density
    const within = next > low && next < high ? next : high < Number.POSITIVE_INFINITY ? (low + high) / 2 : 2 * x
    if (Math.abs(within - x) <= 1e-15 * x || within === x) return within / rate
    if (Math.abs(within - x) <= 1e-12 * x && within === next) return within / rate
    x = within
  }
  return x / rate
}

export const betaCdf = (x: number, a: number, b: number): number =>
  x <= 0 ? 0 : x >= 1 ? 1 : betainc(x, a, b, true, false)
export const betaQuantile = (p: number, a: number, b: number): number => betaincinv(a, b, p, 1 - p)[0] as number

/** Student's t. */
export function studentCdf(t: number, df: number): number {
  const tail = 0.5 * betaCdf(df / (df + t * t), df / 2, 0.5)
  return t > 0 ? 1 - tail : tail
}

export function studentQuantile(p: number, df: number): number {
  if (p === 0.5) return 0
  const x = betaQuantile(2 * Math.min(p, 1 - p), df / 2, 0.5)
  const t = Math.sqrt((df * (1 - x)) / x)
  return p < 0.5 ? -t : t
}

export const poissonPmf = (k: number, mean: number): number =>
  mean === 0 ? Number(k === 0) : Math.exp(k * Math.log(mean) - mean - logGamma(k + 1))

/** Failures before the `size`-th success, each with probability p. Mean size (1 − p) / p. */
export const negativeBinomialPmf = (k: number, size: number, p: number): number =>
  Math.exp(logChoose(k + size - 1, k) + size * Math.log(p) + k * Math.log1p(-p))
export const negativeBinomialCdf = (k: number, size: number, p: number): number =>
  k < 0 ? 0 : betaCdf(p, size, Math.floor(k) + 1)
