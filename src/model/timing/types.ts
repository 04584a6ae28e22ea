import type { Duration } from '../documents/types.ts'

/**
 * A number that is not known exactly, in the language of the Durations (model, section 1). `of` says what the spread means:
 * variation from trip to trip goes into the Duration, not knowing the level goes into the belief. Not given: trips.
 */
export type Spread = (
  | { kind: 'range'; low: number; likely: number; high: number }
  | { kind: 'lognormal'; median: number; spread: number }
) & { of?: 'trips' | 'level' }

export type Uncertain = number | Spread

/** Something to say: a code and its numbers for whoever translates, and the English sentence. Numbers are SI. */
export interface Remark {
  code: string
  message: string
  values: { [name: string]: number }
}

/** What a little more of one input does to the time, all others at their likely values. */
export interface Sensitivity {
  /** Dotted path in the input: `reduction`, `motor.stallTorque`. */
  input: string
  unit: string
  /** Likely value. */
  value: number
  /** Seconds for one unit more. */
  secondsPerUnit: number
  /** Seconds for one hundredth of the value more. */
  secondsPerPercent: number
  /** Seconds at the 10th and the 90th percentile of an uncertain input; null where one of them is impossible. */
  swing?: [number | null, number | null]
}

/** Where the Duration's spread comes from, so that it can be doubted. */
export interface SpreadOfTime {
  /** Over inputs that vary from trip to trip, from `draws` Latin hypercube draws (s). */
  mean: number
  sd: number
  p10: number
  p90: number
  draws: number
  /** Share of the draws in which the mechanism can not do it; they are left out of the rest. */
  impossible: number
}

/** The level of the time where inputs are not known: percentiles 10, 50 and 90 (s), and the share of draws that are impossible. */
export interface Belief {
  low: number
  likely: number
  high: number
  impossible: number
}

export interface Possible<Quantities, Curves, Seconds = number> {
  possible: true
  /** At the likely values (s). */
  seconds: Seconds
  /** Fixed where no input varies from trip to trip. */
  duration: Seconds extends null ? Duration | null : Duration
  /** Null where no input's level is uncertain. */
  belief: Belief | null
  /** Null where no input varies from trip to trip. */
  spread: SpreadOfTime | null
  sensitivity: Sensitivity[]
  /** What an engineer checks. */
  quantities: Quantities
  /** Arrays of equal length, to be drawn. */
  curves: Curves
  warnings: Remark[]
}

export interface Impossible<Quantities> {
  possible: false
  why: Remark
  /** As far as they can be told. */
  quantities: Partial<Quantities>
  warnings: Remark[]
}

/** A mechanism that can not do it is an answer too. */
export type Answer<Quantities, Curves, Seconds = number> =
  | Possible<Quantities, Curves, Seconds>
  | Impossible<Quantities>
