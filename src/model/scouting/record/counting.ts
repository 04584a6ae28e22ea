import { alliances, type Match } from '../types.ts'
import type { KeptForecast, StandingResult } from './types.ts'

/** scored: it counts and is judged. waiting: no result yet. voided: the match was played again, and its result counts for nothing. late: all forecasts came after the result. otherTeams: another team was put into the match after it was forecast. gone: the match is no longer in the schedule. */
export type ForecastState = 'scored' | 'waiting' | 'voided' | 'late' | 'otherTeams' | 'gone'

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
  const known = new Map(matches.map((match) => [match.id, match]))
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
      const now = known.get(match)
      if (!now) return 'gone'
      if (voided.has(match)) return 'voided'
      if (!result) return 'waiting'
      if (!before) return 'late'
      return isOf(now, before) ? 'scored' : 'otherTeams'
    }
    return [{ match, state: state(), forecast: before ?? newest, all, result }]
  })
}

/** Places within an alliance make no difference. */
const isOf = (match: Match, { body: { teams } }: KeptForecast): boolean =>
  alliances.every((alliance) => {
    const now = match[alliance].map(({ team }) => team).sort()
    return now.join('\n') === teams[alliance].toSorted().join('\n')
  })
