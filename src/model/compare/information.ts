import type { Estimate } from './types.ts'

/** Expected points of every option (inner list) in every draw. */
export type Draws = readonly (readonly number[])[]

export const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** Standard error of the mean of independent values. */
export function errorOfMean(values: readonly number[]): number {
  const center = mean(values)
  const squares = values.reduce((sum, value) => sum + (value - center) ** 2, 0)
  return values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1) / values.length)
}

/** Each option's mean over the draws. */
export const meansOf = (draws: Draws): number[] =>
  (draws[0] ?? []).map((_, option) => mean(draws.map((values) => values[option] as number)))

/** How often each option is best; equally good ones share the draw. */
export function chanceOfBest(draws: Draws): number[] {
  const shares = (draws[0] ?? []).map(() => 0)
  for (const values of draws) {
    const most = Math.max(...values)
    const best = values.flatMap((value, option) => (most - value <= 1e-9 ? [option] : []))
    for (const option of best) shares[option]! += 1 / best.length
  }
  return shares.map((share) => share / draws.length)
}

/** What each option is expected to lose against the best of each draw (points). */
export const expectedRegret = (draws: Draws): number[] =>
  (draws[0] ?? []).map((_, option) => mean(draws.map((values) => Math.max(...values) - (values[option] as number))))

/**
 * Expected value of perfect information: mean of the best in each draw − best of the means (points). The standard error
 * is that of the mean over `parts` equal, independent parts of the draws (the hypercubes).
 */
export function perfectInformation(draws: Draws, parts: number): Estimate {
  const means = meansOf(draws)
  const best = means.indexOf(Math.max(...means))
  const lost = draws.map((values) => Math.max(...values) - (values[best] as number))
  const size = draws.length / parts
  const byPart = Array.from({ length: parts }, (_, part) => mean(lost.slice(part * size, (part + 1) * size)))
  return { value: mean(lost), standardError: errorOfMean(byPart) }
}
