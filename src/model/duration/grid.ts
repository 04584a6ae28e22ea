import { type Pmf, pmf, thinned } from '../leg/pmf.ts'
import type { Distribution } from './distribution.ts'

/** Mass that the tails of an unbounded distribution may lose to their last grid point. */
const lost = { fast: 1e-13, slow: 1e-10 }

/** From this quantile on an endless tail is integrated over so many steps at once. */
const tailFrom = 0.99
const widest = 10

/** Gauss–Legendre on [0, 1] with three points, and with two where a density hardly bends within a step. */
const three = { abscissas: [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)], weights: [5 / 18, 8 / 18, 5 / 18] }
const two = { abscissas: [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)], weights: [0.5, 0.5] }

/** From so many steps to a standard deviation on, two points err by less than 1e-7 of a density three of them out. */
const smooth = 16

/**
 * A Duration put on the grid 0, step, 2·step, …: each mass is shared between its two neighbouring points in
 * proportion to nearness, so that the mean is kept.
 * A density is integrated panel by panel; the panels at the ends, where a beta's slope may be infinite, are refined,
 * and those of an endless tail, which is thinned in any case, are wider.
 */
export const massOnGrid = (distribution: Distribution, step: number): Pmf => thinned(denseOnGrid(distribution, step))

/** The same without thinning, for what will be scaled. */
export function denseOnGrid(distribution: Distribution, step: number): Pmf {
  return distribution.atoms ? atomsOnGrid(distribution.atoms, step) : densityOnGrid(distribution, step)
}

/** Every draw multiplied by `scale` before it is put on the grid: for distributions of atoms, which lose nothing by it. */
export const scaledAtomsOnGrid = (atoms: NonNullable<Distribution['atoms']>, step: number, scale: number): Pmf =>
  thinned(atomsOnGrid(atoms, step, scale))

function densityOnGrid(distribution: Distribution, step: number): Pmf {
  const density = distribution.density as (x: number) => number
  const [low, high] = bounds(distribution)
  const first = Math.floor(low / step + 1e-9)
  const last = Math.ceil(high / step - 1e-9)
  const endless = !Number.isFinite(distribution.support[1])
  const tail = endless ? widest * Math.ceil(distribution.quantile(tailFrom) / step / widest) : last
  const mass = new Float64Array(last - first + 2 + widest)
  const inside = Math.sqrt(distribution.variance) > smooth * step ? two : three
  for (let k = first; k < last; ) {
    const points = k >= tail ? widest : 1
    const from = Math.max(low, k * step)
    const to = Math.min(high, (k + points) * step)
    const panels = k === first || k >= last - 1 ? 24 : 1
    const panel = (to - from) / panels
    const { abscissas, weights } = panels === 1 && points === 1 ? inside : three
    for (let p = 0; p < panels; p++)
      for (let i = 0; i < weights.length; i++) {
        const x = from + panel * (p + (abscissas[i] as number))
        const m = (weights[i] as number) * panel * density(x)
        const right = (x / step - k) / points
        mass[k - first] = (mass[k - first] as number) + m * (1 - right)
        mass[k - first + points] = (mass[k - first + points] as number) + m * right
      }
    k += points
  }
  return pmf(first, mass)
}

function bounds(distribution: Distribution): [number, number] {
  const [low, high] = distribution.support
  return Number.isFinite(high) ? [low, high] : [distribution.quantile(lost.fast), distribution.quantile(1 - lost.slow)]
}

function atomsOnGrid(atoms: readonly (readonly [number, number])[], step: number, scale = 1): Pmf {
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
