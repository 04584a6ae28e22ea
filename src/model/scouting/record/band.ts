import { Uniforms } from '../../random/index.ts'
import { quantileOf } from '../statistics/index.ts'
import { distinct, poolAdjacentViolators } from './calibration.ts'
import { drawOf, streams } from './draws.ts'

/** A match that was forecast, its outcome left out. */
export interface Forecastable {
  id: string
  win: number
  tie: number
}

export interface BandPoint {
  forecast: number
  low: number
  high: number
}

/**
 * Where the calibration curve of both sides lies with 90 % at each forecast if the forecasts hold: outcomes are drawn as each
 * forecast says, a match once for both of its sides, and the curve is fitted to them. The forecasts stay as they are; numbers hang on
 * their ids, so that the band does not change from look to look.
 *
 * Source: Dimitriadis, Gneiting & Jordan (2021), consistency bands by resampling.
 */
export function consistencyBand(matches: readonly Forecastable[], replicates = 400): BandPoint[] {
  const chances = matches.map(({ win, tie }) => win + tie / 2)
  const { values, place } = distinct([...chances, ...chances.map((chance) => 1 - chance)])
  const n = matches.length
  const counts = new Float64Array(values.length)
  for (const k of place) counts[k]! += 1
  const draws = matches.map(({ id }) => new Uniforms(drawOf(id), [streams.band]))
  const fitted = values.map(() => new Float64Array(replicates))
  const shares = new Float64Array(values.length)
  for (let b = 0; b < replicates; b++) {
    shares.fill(0)
    for (const [i, { win, tie }] of matches.entries()) {
      const u = draws[i]!.next()
      const came = u < win ? 1 : u < win + tie ? 0.5 : 0
      shares[place[i]!]! += came
      shares[place[n + i]!]! += 1 - came
    }
    for (let k = 0; k < shares.length; k++) shares[k]! /= counts[k]!
    const curve = poolAdjacentViolators(shares, counts)
    for (let k = 0; k < values.length; k++) fitted[k]![b] = curve[k]!
  }
  return values.map((forecast, k) => {
    const sorted = fitted[k]!.sort()
    return { forecast, low: quantileOf(sorted, 0.05), high: quantileOf(sorted, 0.95) }
  })
}
