import type { Difference, Mean, PlayedVersion } from './types.ts'

/** A lead below this is none: points are sums of decimals. */
const equal = 1e-9

/** 1, ½ or 0 for a win, tie or loss. */
export const wonBy = (margin: number): number => (margin > equal ? 1 : margin >= -equal ? 0.5 : 0)

/** @param values at least two */
export function meanOf(values: ArrayLike<number> & Iterable<number>): Mean {
  const count = values.length
  let sum = 0
  for (const value of values) sum += value
  const mean = sum / count
  let squares = 0
  for (const value of values) squares += (value - mean) ** 2
  return { mean, standardError: Math.sqrt(squares / Math.max(1, count - 1) / count) }
}

/** Chance to win, a tie as half; two more of each kind in the error, so that it is never 0 (Agresti & Coull 1998). */
export function winOf(margins: Float64Array): Mean {
  const count = margins.length
  const won = margins.reduce((sum, margin) => sum + wonBy(margin), 0)
  const near = (won + 2) / (count + 4)
  return { mean: won / count, standardError: Math.sqrt((near * (1 - near)) / (count + 4)) }
}

type Margins = Pick<PlayedVersion, 'margins'>

/** What `own` brings more than `other`, of the matches that both played. */
export function differenceOf(own: Margins, other: Margins): Difference {
  const count = Math.min(own.margins.length, other.margins.length)
  const of = (worth: (margin: number) => number) =>
    meanOf(Float64Array.from({ length: count }, (_, k) => worth(own.margins[k]!) - worth(other.margins[k]!)))
  return { win: of(wonBy), points: of((margin) => margin) }
}
