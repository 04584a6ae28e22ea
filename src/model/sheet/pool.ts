import type { LevelBelief } from '../documents/quickSheet.ts'

/** What one person thinks of a leg (s): the shortest trip, the usual one and the longest. */
export interface Guess {
  low: number
  likely: number
  high: number
}

/** What a round says of a leg: how trips vary, and how sure the group is of the usual trip. */
export interface Pooled {
  range: LevelBelief
  belief: LevelBelief
}

/**
 * Quantile of a sample by linear interpolation between its order statistics: type 7 of
 * Hyndman and Fan, 'Sample quantiles in statistical packages', The American Statistician 50 (1996), 361–365.
 * @throws RangeError for an empty sample
 */
export function quantile(values: readonly number[], probability: number): number {
  if (values.length === 0) throw new RangeError('values must hold at least one number, got none')
  const sorted = [...values].sort((a, b) => a - b)
  const position = (sorted.length - 1) * probability
  const below = Math.floor(position)
  const [lower, upper] = [sorted[below] as number, sorted[Math.min(below + 1, sorted.length - 1)] as number]
  return lower + (upper - lower) * (position - below)
}

const tenths = (value: number): number => Math.round(value * 10) / 10

/**
 * Many guesses as one: the range of trips from the 10th percentile of the lows over the median of the likelies to the
 * 90th percentile of the highs, so that one careless guess in ten moves neither end far; the belief about the usual
 * trip from the 10th over the 50th to the 90th percentile of the likelies. To 0.1 s.
 * @throws RangeError where nobody guessed
 */
export function pool(guesses: readonly Guess[]): Pooled {
  const likelies = guesses.map(({ likely }) => likely)
  const likely = tenths(quantile(likelies, 0.5))
  const low = tenths(
    quantile(
      guesses.map((guess) => guess.low),
      0.1,
    ),
  )
  const high = tenths(
    quantile(
      guesses.map((guess) => guess.high),
      0.9,
    ),
  )
  return {
    range: { low, likely, high },
    belief: { low: tenths(quantile(likelies, 0.1)), likely, high: tenths(quantile(likelies, 0.9)) },
  }
}
