import { distributionOf } from '../../duration/index.ts'
import type { Sensitivity } from '../types.ts'
import type { Calculator } from './calculator.ts'
import { numberAt, type Place, withNumbers } from './settle.ts'

/** Steps for numbers that are 0; for the others a thousandth, which is far below what the model can mean. */
const zeroStep: { [unit: string]: number } = { 'm³/s': 1e-7, 'kg·m²': 1e-8, Ω: 1e-5 }
const share = 1e-3

/** Smaller than any number of a mechanism in any of these units: a share of it would be no step at all. */
const nothing = 1e-15

/**
 * What a little more of each input does to the time, by differences. Inputs without any effect are left out; largest effect of a hundredth first.
 */
export function sensitivityOf<Settled>(
  calculator: Calculator<Settled, unknown, unknown>,
  likely: Settled,
  places: readonly Place[],
): Sensitivity[] {
  const here = calculator.seconds(likely)
  if (here === null) return []
  const found = Object.entries(calculator.units).flatMap(([input, unit]): Sensitivity[] => {
    const path = pathOf(input)
    const value = numberAt(likely, path)
    if (value === null) return []
    const step = Math.abs(value) < nothing ? (zeroStep[unit] ?? 1e-4) : Math.abs(value) * share
    const at = (to: number) => calculator.seconds(withNumbers(likely, [[path, to]]))
    const slope = slopeOf(at, { value, step, here })
    const swing = swingOf(places, path, at)
    if (slope === null || (Math.abs(slope * step) < 1e-9 * here && swing === null)) return []
    const told = { input, unit, value, secondsPerUnit: slope, secondsPerPercent: (slope * value) / 100 }
    return [swing === null ? told : { ...told, swing }]
  })
  return found.sort((a, b) => Math.abs(b.secondsPerPercent) - Math.abs(a.secondsPerPercent))
}

/** Numbers of a dotted path are places in a list. */
export const pathOf = (dotted: string): (string | number)[] =>
  dotted.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key))

/** A step up, or down where more is impossible: half the motions of central differences, and exact to about a thousandth. */
function slopeOf(
  at: (value: number) => number | null,
  { value, step, here }: { value: number; step: number; here: number },
) {
  const more = at(value + step)
  if (more !== null) return (more - here) / step
  const less = at(value - step)
  return less === null ? null : (here - less) / step
}

function swingOf(places: readonly Place[], path: Place['path'], at: (value: number) => number | null) {
  const place = places.find((each) => each.path.join('.') === path.join('.'))
  if (!place) return null
  const { quantile } = distributionOf(place.spread)
  return [at(quantile(0.1)), at(quantile(0.9))] satisfies Sensitivity['swing']
}
