import erfc from '@stdlib/math-base-special-erfc'
import quantile from '@stdlib/stats-base-dists-normal-quantile'

/** Of the standard normal distribution. */
export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)
export const normalCdf = (z: number): number => 0.5 * erfc(-z / Math.SQRT2)
export const normalQuantile = (p: number): number => quantile(p, 0, 1)

/**
 * ln of the share above z, and how steeply it falls (the density over that share, Mills' ratio turned round). Far out by its
 * continued fraction, where both would be 0.
 */
export function upperTail(z: number): { log: number; hazard: number } {
  if (z < 25) {
    const above = normalCdf(-z)
    return { log: Math.log(above), hazard: normalDensity(z) / above }
  }
  const hazard = z + 1 / (z + 2 / (z + 3 / (z + 4 / z)))
  return { log: -0.5 * z * z - 0.5 * Math.log(2 * Math.PI) - Math.log(hazard), hazard }
}
