export type LegRequest =
  | { kind: 'collect'; source: string; spot: string; from: string; load: number }
  | { kind: 'score'; goal: string; entry: number; spot: string; from: string; piece: string; load: number }
  | { kind: 'finish'; finish: string; spot: string; from: string }

/** Times of one stage at mean durations (s), and how often it lies on a longest path. */
export interface StageReport {
  id: string
  /** All pieces of the load together. */
  mean: number
  earliestStart: number
  earliestFinish: number
  latestStart: number
  latestFinish: number
  float: number
  criticality: number
}

export interface LegReport {
  mean: number
  sd: number
  p10: number
  p50: number
  p90: number
  /** [seconds, probability] on the grid of 0.1 s. */
  distribution: [number, number][]
  /** When each piece counts, where pieces count one by one. */
  pieces?: { mean: number }[]
  /** Null for a leg given whole. */
  drive: { length: number; seconds: number } | null
  stages: StageReport[]
}
