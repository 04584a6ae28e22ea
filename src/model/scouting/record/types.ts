import type { Alliance, Result } from '../types.ts'

/** Raised whenever the same records would be forecast otherwise than before. */
export const forecastVersion = 1

/** How many simulated matches came to `first`, `first` + 1, … whole points. */
export interface Histogram {
  first: number
  counts: number[]
}

/** A score forecast by its mean and standard deviation alone (points). */
export interface Normal {
  mean: number
  sd: number
}

/** What a forecast without any scouting would have said at the same moment; null where too few results were there. */
export interface Baselines {
  /** Every alliance brings what the event's alliances brought on average. */
  event: Normal | null
  /** Every team brings what its alliances brought more or less than the event's. */
  teams: { [alliance in Alliance]: Normal } | null
}

/** What was shown before a match. Chances and points of the red alliance come first. */
export interface ForecastBody {
  /** Who was to play, positions 1 to 3. */
  teams: { [alliance in Alliance]: string[] }
  /** Observations behind it. */
  records: number
  /** Teams of the match of which nothing had been seen. */
  neverSeen: string[]
  replicates: number
  seed: number
  /** Chances that red wins, that both come to the same, and that blue wins. */
  win: number
  tie: number
  loss: number
  scores: { [alliance in Alliance]: Histogram }
  baselines: Baselines
}

/** A forecast as it is kept. Nothing of it is ever changed. */
export interface KeptForecast {
  /** SHA-256 of the canonical JSON of all else, in hexadecimal. */
  id: string
  match: string
  /** By the server's clock (ISO 8601). */
  madeAt: string
  /** SHA-256 of what it was made from: the same records give the same. */
  from: string
  /** The `forecastVersion` that made it. */
  version: number
  body: ForecastBody
}

/** The result of a match that stands, and since when there is one (ISO 8601). Corrections do not move that moment. */
export interface StandingResult {
  match: string
  since: string
  result: Result
}
