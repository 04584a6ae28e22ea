import type { Spread, Uncertain } from '../../../src/model/timing/index.ts'
import type { InputNumber } from './inputs.ts'
import { fits } from './problems.ts'

/** How well a number is known, and what its spread means. */
export type Certainty = 'known' | 'tripsRange' | 'levelRange' | 'tripsLognormal' | 'levelLognormal'

/** The middle of a number: itself, or what is likely. */
export const likelyOf = (value: Uncertain): number =>
  typeof value === 'number' ? value : value.kind === 'range' ? value.likely : value.median

export function certaintyOf(value: Uncertain): Certainty {
  if (typeof value === 'number') return 'known'
  const of = value.of ?? 'trips'
  return value.kind === 'range' ? `${of}Range` : `${of}Lognormal`
}

/** Three digits: a first guess of a spread is not known to more. */
const roughly = (value: number) => Number(value.toPrecision(3))

/** The same middle, known otherwise: a spread begins with a tenth to either side, within the number's limits. */
export function withCertainty(value: Uncertain, next: Certainty, number: InputNumber): Uncertain {
  const likely = likelyOf(value)
  if (next === 'known') return likely
  const of: Spread['of'] = next.startsWith('level') ? 'level' : 'trips'
  if (next.endsWith('Lognormal')) {
    if (typeof value !== 'number' && value.kind === 'lognormal') return { ...value, of }
    const spreads = [1.1, 1.05, 1.02, 1.01, 1]
    return {
      kind: 'lognormal',
      median: likely,
      spread: spreads.find((spread) => fits({ median: likely, spread }, number)) ?? 1,
      of,
    }
  }
  if (typeof value !== 'number' && value.kind === 'range') return { ...value, of }
  const tenth = Math.abs(likely) / 10 || (number.max - number.min) / 1000
  const low = Math.min(likely, Math.max(number.min, roughly(likely - tenth)))
  const high = Math.max(likely, Math.min(number.max, roughly(likely + tenth)))
  return { kind: 'range', low, likely, high, of }
}
