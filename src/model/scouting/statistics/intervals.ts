import { betaQuantile, gammaQuantile } from './distributions.ts'
import { normalQuantile } from './normal.ts'

export type Limits = readonly [low: number, high: number]

/** Exact limits of a Poisson mean after a count. Source: Garwood, Biometrika 28 (1936), 437–442. */
export function poissonLimits(count: number, level = 0.95): Limits {
  const tail = (1 - level) / 2
  return [count === 0 ? 0 : gammaQuantile(tail, count, 1), gammaQuantile(1 - tail, count + 1, 1)]
}

/** Limits of a share by the score test. Source: Wilson, Journal of the American Statistical Association 22 (1927), 209–212. */
export function wilson(hits: number, of: number, level = 0.95): Limits {
  const z = normalQuantile((1 + level) / 2)
  const share = hits / of
  const centre = share + (z * z) / (2 * of)
  const half = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of))
  const all = 1 + (z * z) / of
  return [hits === 0 ? 0 : (centre - half) / all, hits === of ? 1 : (centre + half) / all]
}

/** Exact limits of a share. Source: Clopper & Pearson, Biometrika 26 (1934), 404–413. */
export function clopperPearson(hits: number, of: number, level = 0.95): Limits {
  const tail = (1 - level) / 2
  return [
    hits === 0 ? 0 : betaQuantile(tail, hits, of - hits + 1),
    hits === of ? 1 : betaQuantile(1 - tail, hits + 1, of - hits),
  ]
}
