import { type Counting, centralInterval, meanOfHistogram, rangeOf, successes } from '../../scouting/record/index.ts'
import type { Match, Result } from '../../scouting/types.ts'
import { inOrder } from '../order.ts'
import { otherAlliance, seatOf } from '../seats.ts'
import type { AfterForecasts, AfterMatch } from './types.ts'

/** Our matches in the order of play, each with what was said of it before. */
export function afterMatches(
  team: string,
  {
    matches,
    results,
    counting,
  }: { matches: readonly Match[]; results: readonly Result[]; counting: readonly Counting[] },
): AfterMatch[] {
  const voided = new Set(matches.flatMap(({ voids }) => voids ?? []))
  const said = new Map(counting.map((each) => [each.match, each]))
  const came = new Map(results.map((result) => [result.match, result]))
  return matches
    .filter(({ id, phase }) => phase !== 'practice' && !voided.has(id))
    .toSorted(inOrder)
    .flatMap((match): AfterMatch[] => {
      const alliance = seatOf(match, team)?.alliance
      if (!alliance) return []
      const other = otherAlliance(alliance)
      const [before, result] = [said.get(match.id), came.get(match.id)]
      const body = before?.forecast.body
      return [
        {
          match: match.id,
          alliance,
          forecast: body
            ? {
                win: (alliance === 'red' ? body.win : body.loss) + body.tie / 2,
                mean: meanOfHistogram(body.scores[alliance]),
                interval80: ends(centralInterval(body.scores[alliance], 0.8)),
              }
            : null,
          state: before?.state ?? 'notForecast',
          result: result ? { ours: result[alliance].points.total, theirs: result[other].points.total } : null,
        },
      ]
    })
}

const ends = ({ low, high }: { low: number; high: number }): [number, number] => [low, high]

/** What became of those forecasts that count; null where none does. */
export function afterForecasts(matches: readonly AfterMatch[]): AfterForecasts | null {
  const own = matches.flatMap(({ forecast, result, state }) =>
    forecast && result && state === 'scored' ? [{ forecast, result }] : [],
  )
  if (own.length === 0) return null
  const gaps = own.map(({ forecast, result }) => result.ours - forecast.mean)
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length
  const squares = gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0)
  const chances = own.map(({ forecast }) => forecast.win)
  return {
    matches: own.length,
    expected: chances.reduce((sum, win) => sum + win, 0),
    came: own.reduce((sum, { result }) => sum + (1 + Math.sign(result.ours - result.theirs)) / 2, 0),
    range80: rangeOf(successes(chances), 0.1),
    difference: { mean, error: gaps.length > 1 ? Math.sqrt(squares / (gaps.length - 1) / gaps.length) : null },
    inside80: own.filter(
      ({
        forecast: {
          interval80: [low, high],
        },
        result: { ours },
      }) => low <= ours && ours <= high,
    ).length,
  }
}
