import betainc from '@stdlib/math-base-special-betainc'
import gammainc from '@stdlib/math-base-special-gammainc'
import gammaincinv from '@stdlib/math-base-special-gammaincinv'
import betaincinv from '@stdlib/math-base-special-kernel-betaincinv'
import { logChoose, logGamma } from './logGamma.ts'

/** Gamma by shape and rate. */
export const gammaCdf = (x: number, shape: number, rate: number): number =>
  x <= 0 ? 0 : gammainc(rate * x, shape, true, false)
export const gammaQuantile = (p: number, shape: number, rate: number): number => gammaincinv(p, shape) / rate

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
