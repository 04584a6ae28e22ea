import type { Game, Option } from '../documents/types.ts'
import type { StatedReport } from '../match/stated/types.ts'

/** One unknown number of a comparison; its beta-PERT is belief about a level. */
export interface Input {
  id: string
  /** JSON Pointers (RFC 6901) into { game, options }. */
  paths: string[]
  /** Replaces the number, or multiplies or is added to it (a Duration: to every draw). */
  as: 'value' | 'factor' | 'add'
  low: number
  likely: number
  high: number
  /** Standard deviation of one measurement, in the input's own unit. */
  perMeasurement?: number
}

export interface Estimate {
  value: number
  standardError: number
}

export interface CompareRequest {
  game: Game
  options: Option[]
  inputs?: Input[]
  /** Id of the input whose break-even is asked for. */
  breakEven?: string
  belief?: { seed: number }
}

export interface OptionSummary {
  id: string
  mean: number
  sd: number
  p10: number
  p50: number
  p90: number
  /** Chance to win and expected ranking points of a match with the stated partners and opponents, where these are given. */
  win?: { probability: number; standardError: number }
  rankingPoints?: { mean: number; standardError: number }
}

export interface Crossing {
  value: number
  from: string
  to: string
  jump: boolean
}

export interface BeliefReport {
  best: { [option: string]: number }
  regret: { [option: string]: number }
  evpi: Estimate
  evppi: { [input: string]: Estimate }
  evsi: { [input: string]: [number, number][] }
  /** Rms by which a difference between options is still off the plans on 0.1 s, in the draws repeated there (points). */
  gridError: number
  /** What form adds to each option's points at the likely values. The belief's own values are those of form 1. */
  form: { [option: string]: number }
}

export interface CompareReport {
  options: OptionSummary[]
  beats: { [option: string]: { [other: string]: number } }
  breakEven?: { input: string; crossings: Crossing[] }
  swing?: { input: string; low: number; high: number; difference: [number, number] }[]
  belief?: BeliefReport
  /** Whole matches of each option with the stated partners and opponents, where these are given. */
  field?: StatedReport
}
