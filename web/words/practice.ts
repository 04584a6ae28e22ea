import type { Input } from '../../src/model/compare/types.ts'

/** What a day of practice is worth: a share of times, which less practice makes longer, or of success. */
export interface Practice {
  perDay: number
  /** What is multiplied by less practice: a success falls, times rise. */
  falls: boolean
  /** Days less practice that a value of the input stands for, and back. */
  days(value: number): number
  value(days: number): number
}

const suffix = /, 1 d = (\d+(?:\.\d+)?) %$/

const rounded = (value: number): number => Number(value.toPrecision(12)) + 0

/** The id of such an input: its name, and what a day is worth, which every language reads alike ('d' is the SI's day). */
export const practiceId = (name: string, perDay: number): string => `${name}, 1 d = ${rounded(perDay * 100)} %`

/** The name alone. */
export const practiceName = (id: string): string => id.replace(suffix, '')

/**
 * An input that is told in days: a plain factor on what its paths name, 1 + days · share on times and 1 − days · share on a
 * success. The share is kept in its id. Null for every other input.
 */
export function practiceOf(input: Pick<Input, 'id' | 'as' | 'paths'>): Practice | null {
  const found = suffix.exec(input.id)
  if (!found || input.as !== 'factor') return null
  const perDay = Number(found[1]) / 100
  if (!(perDay > 0)) return null
  const falls = input.paths.every((path) => path.endsWith('/success'))
  const sign = falls ? -1 : 1
  return {
    perDay,
    falls,
    days: (value) => rounded(((value - 1) * sign) / perDay),
    value: (days) => rounded(1 + sign * days * perDay),
  }
}
