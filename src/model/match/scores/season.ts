import { philox } from '../../random/index.ts'
import { Calibrator } from './calibrate.ts'
import { forecastOf, heldOutError, paidFor } from './forecast.ts'
import { ScoreSpread } from './spread.ts'
import type { Calibration, SeasonReport, SeasonRequest, TeamForecast } from './types.ts'

/** What a season comes to, from the simulated matches of each of its matches, in their order. */
export function seasonReport(request: SeasonRequest, calibrations: readonly Calibration[]): SeasonReport {
  const { ranking } = request.game
  return {
    seasons: request.seasons,
    seed: request.seed,
    matches: request.matches.map(({ id }, k) => forecastOf(ranking, id, calibrations[k] as Calibration)),
    teams: teamsOf(request, seasonTotals(request, calibrations)),
    error: heldOutError(ranking, calibrations),
  }
}

/** The same by one thread, simulation included. @throws ModelError as plans do */
export function season(request: SeasonRequest): SeasonReport {
  const calibrator = new Calibrator(request)
  return seasonReport(
    request,
    request.matches.map((_, number) => calibrator.calibrate(number)),
  )
}

/**
 * Ranking points of each team in each season: `totals[team · seasons + season]`. A season holds one draw of what is not
 * known of the teams through all its matches; its luck is drawn anew in each. Nothing is played: a match is one look-up.
 */
export function seasonTotals(request: SeasonRequest, calibrations: readonly Calibration[]): Float64Array {
  const { seasons, seed, matches, teams, game } = request
  const spreads = calibrations.map((calibration) => new ScoreSpread(calibration))
  const rowOf = new Map(teams.map(({ team }, row) => [team, row * seasons]))
  const rows = matches.map(({ ours, theirs }) => ({
    ours: ours.map((team) => rowOf.get(team) as number),
    theirs: theirs.map((team) => rowOf.get(team) as number),
  }))
  const totals = new Float64Array(teams.length * seasons)
  const words = new Uint32Array(4)
  const key = [seed % 2 ** 32, Math.floor(seed / 2 ** 32)]
  const counter = [0, 0, 0, 2]
  for (let season = 0; season < seasons; season++) {
    counter[0] = season
    for (let match = 0; match < matches.length; match++) {
      if (match % 4 === 0) {
        counter[1] = match
        philox(counter, key, words)
      }
      const spread = spreads[match] as ScoreSpread
      const draw = season % spread.draws
      const record = spread.pick(draw, words[match % 4] as number)
      const lead = spread.ours(record, draw) - spread.theirs(record, draw)
      const { ours, theirs } = rows[match] as (typeof rows)[number]
      const { oursExtra, theirsExtra } = spread.records
      add(totals, ours, season, paidFor(game.ranking, lead) + (oursExtra[record] as number))
      add(totals, theirs, season, paidFor(game.ranking, -lead) + (theirsExtra[record] as number))
    }
  }
  return totals
}

function add(totals: Float64Array, rows: readonly number[], season: number, points: number): void {
  for (let k = 0; k < rows.length; k++) {
    const place = (rows[k] as number) + season
    totals[place] = (totals[place] as number) + points
  }
}

function teamsOf({ teams, matches, seasons }: SeasonRequest, totals: Float64Array): TeamForecast[] {
  return teams.map(({ team }, row) => {
    const own = totals.slice(row * seasons, (row + 1) * seasons).sort()
    const mean = own.reduce((sum, points) => sum + points, 0) / seasons
    const variance = own.reduce((sum, points) => sum + (points - mean) ** 2, 0) / Math.max(1, seasons - 1)
    const at = (share: number) => own[Math.min(seasons - 1, Math.floor(share * seasons))] as number
    const plays = ({ ours, theirs }: (typeof matches)[number]) => ours.includes(team) || theirs.includes(team)
    return {
      team,
      matches: matches.filter(plays).length,
      rankingPoints: { mean, sd: Math.sqrt(variance), p10: at(0.1), p50: at(0.5), p90: at(0.9) },
    }
  })
}
