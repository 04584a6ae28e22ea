import type { MatchReport } from '../../match/types.ts'
import { canonicalJson } from '../canonical.ts'
import type { Match, Result } from '../types.ts'
import { baselinesFor } from './baselines.ts'
import { histogramOf } from './histogram.ts'
import type { ForecastBody } from './types.ts'

/** Of a match that was played in simulation, red as ours, and of what was known: what is kept of its forecast. */
export function forecastBody(of: {
  match: Match
  report: Pick<MatchReport, 'replicates' | 'seed' | 'win' | 'tie' | 'loss' | 'distributions'>
  records: number
  neverSeen: string[]
  matches: readonly Match[]
  results: readonly Result[]
}): ForecastBody {
  const { match, report, records, neverSeen } = of
  const { replicates, seed, win, tie, loss, distributions } = report
  return {
    teams: { red: match.red.map(({ team }) => team), blue: match.blue.map(({ team }) => team) },
    ...{ records, neverSeen, replicates, seed },
    ...{ win: win.probability, tie: tie.probability, loss: loss.probability },
    scores: { red: histogramOf(distributions.ours, replicates), blue: histogramOf(distributions.theirs, replicates) },
    baselines: baselinesFor(match, of.matches, of.results),
  }
}

export interface EarlierBasis {
  event: string
  discount: number
  changed: readonly string[]
  matches: readonly Match[]
  records: readonly { id: string; team: string | null }[]
}

const pairOf = ({ id, team }: { id: string; team: string | null }) => [id, team]

/** What forecasts of an event's coming matches are made from, as a text whose hash is kept with them. */
export function basisOf(of: {
  /** Id and revision of the game. */
  rules: readonly [string, number]
  level: string | undefined
  /** How soon matches are forgotten, where a lead chose it. */
  halfLife?: number | undefined
  teams: readonly string[]
  matches: readonly Match[]
  /** Records that count, changes of robots and visits, each with its team. */
  records: readonly { id: string; team: string | null }[]
  results: readonly Result[]
  /** An earlier event that counts, with its records that do and its schedule. */
  earlier?: EarlierBasis | undefined
}): string {
  const { level = null, halfLife, records, earlier, ...rest } = of
  const fading = halfLife === undefined ? {} : { halfLife }
  const before = earlier && { earlier: { ...earlier, records: earlier.records.map(pairOf) } }
  return canonicalJson({ ...rest, ...fading, ...before, level, records: records.map(pairOf) })
}
