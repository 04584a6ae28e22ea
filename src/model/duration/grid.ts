import { type Pmf, pmf, thinned } from '../leg/pmf.ts'
import type { Distribution } from './distribution.ts'

/** Mass that the tails of an unbounded distribution may lose to their last grid point. */
const tail = { fast: 1e-13, slow: 1e-10 }

/** Three-point Gauss–Legendre on [0, 1]. */
const abscissas = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)]
const weights = [5 / 18, 8 / 18, 5 / 18]

/**
 * A Duration put on the grid 0, step, 2·step, …: each mass is shared between its two neighbouring points in
 * proportion to nearness, so that the mean is kept. `scale` multiplies every draw (a drive: its time without pace).
 * A density is integrated panel by panel; the panels at the ends, where a beta's slope may be infinite, are refined.
 */
export function massOnGrid(distribution: Distribution, step: number, scale = 1): Pmf {
  if (distribution.atoms) return atomsOnGrid(distribution.atoms, step, scale)
  const [low, high] = bounds(distribution, scale)
  const first = Math.floor(low / step + 1e-9)
  const last = Math.ceil(high / step - 1e-9)
  const mass = new Float64Array(last - first + 2)
  const density = distribution.density as (x: number) => number
  for (let k = first; k < last; k++) {
    const from = Math.max(low, k * step)
    const to = Math.min(high, (k + 1) * step)
    const panels = k === first || k === last - 1 ? 24 : 1
    for (let panel = 0; panel < panels; panel++) {
      const width = (to - from) / panels
      const start = from + panel * width
      for (let i = 0; i < 3; i++) {
        const x = start + width * (abscissas[i] as number)
        const m = (weights[i] as number) * width * density(x / scale)
        const share = x / step - k
        mass[k - first] = (mass[k - first] as number) + m * (1 - share)
        mass[k - first + 1] = (mass[k - first + 1] as number) + m * share
      }
    }
  }
  return thinned(pmf(first, mass))
}

function bounds(distribution: Distribution, scale: number): [number, number] {
  const [low, high] = distribution.support
  if (Number.isFinite(high)) return [low * scale, high * scale]
  return [distribution.quantile(tail.fast) * scale, distribution.quantile(1 - tail.slow) * scale]
}

function atomsOnGrid(atoms: readonly (readonly [number, number])[], step: number, scale: number): Pmf {
  let low = Number.POSITIVE_INFINITY
  let high = 0
  for (const [value] of atoms) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  const first = Math.floor((low * scale) / step + 1e-9)
  const mass = new Float64Array(Math.ceil((high * scale) / step - 1e-9) - first + 2)
  for (const [value, probability] of atoms) {
    const place = (value * scale) / step - first
    const k = Math.max(0, Math.floor(place + 1e-9))
    const share = Math.max(0, place - k)
    mass[k] = (mass[k] as number) + probability * (1 - share)
    mass[k + 1] = (mass[k + 1] as number) + probability * share
  }
  return pmf(first, mass)
}
