import type { Match } from '../types.ts'
import type { KeptForecast, StandingResult } from './types.ts'

/** scored: it counts and is judged. waiting: no result yet. voided: the match was played again, and its result counts for nothing. late: all forecasts came after the result. gone: the match is no longer in the schedule. */
export type ForecastState = 'scored' | 'waiting' | 'voided' | 'late' | 'gone'

export interface Counting {
  match: string
  state: ForecastState
  /** The one that counts: the last before there was a result. Where none did, the last. */
  forecast: KeptForecast
  /** All of the match, oldest first. */
  all: KeptForecast[]
  result: StandingResult | null
}

/**
 * Of each match that was forecast the one forecast that counts. Matches in their order, then those that are gone.
 * @param forecasts oldest first
 */
export function countingForecasts(
  forecasts: readonly KeptForecast[],
  matches: readonly Match[],
  results: readonly StandingResult[],
): Counting[] {
  const voided = new Set(matches.flatMap(({ voids }) => voids ?? []))
  const known = new Set(matches.map(({ id }) => id))
  const standing = new Map(results.map((result) => [result.match, result]))
  const byMatch = new Map<string, KeptForecast[]>(matches.map(({ id }) => [id, []]))
  for (const forecast of forecasts) byMatch.set(forecast.match, [...(byMatch.get(forecast.match) ?? []), forecast])
  return [...byMatch].flatMap(([match, all]): Counting[] => {
    const newest = all.at(-1)
    if (!newest) return []
    const result = standing.get(match) ?? null
    // Moments are written in one way (UTC, to the millisecond), so that they compare as texts.
    const before = result && all.findLast(({ madeAt }) => madeAt <= result.since)
    const state = (): ForecastState => {
      if (!known.has(match)) return 'gone'
      if (voided.has(match)) return 'voided'
      if (!result) return 'waiting'
      return before ? 'scored' : 'late'
    }
    return [{ match, state: state(), forecast: before ?? newest, all, result }]
  })
}
