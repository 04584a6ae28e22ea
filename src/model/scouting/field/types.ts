import type { OverriddenLeg } from '../../documents/records.ts'

/** A collect or a score leg of a design. */
export type FieldLegRef = Exclude<OverriddenLeg, { kind: 'finish' }>

/** Why a trip can not be put against a design: nobody noted its goal, it led to several places, or the design has nothing like it. */
export const leftOutReasons = ['noGoal', 'mixed', 'cannotCollect', 'cannotScore', 'tooMany', 'noWay'] as const
export type LeftOutReason = (typeof leftOutReasons)[number]

/** A mean with how far it is known; the interval is null where everything is of one run. */
export interface Known {
  mean: number
  interval95: [number, number] | null
}

/** Times of the same legs by the model and on the field (s). */
export interface Compared {
  /** Trips that were seen to their end. */
  trips: number
  runs: number
  model: { mean: number; sd: number }
  field: Known & { sd: number }
  /** Field less model. */
  difference: Known
}

/** By how much a stage would have to last longer for the leg to take as long as on the field; null where no time does that. */
export interface StageShiftNeeded {
  /** Null: the leg's own time as a whole. */
  stage: string | null
  seconds: number | null
}

export interface FieldLeg extends Compared {
  leg: FieldLegRef
  /** Of the difference of a trip, on average over all trips with parts: this leg's seconds. */
  share: number
  stages: StageShiftNeeded[]
}

/** What practice did to the times: trip time ∝ (number of the run) ^ b. */
export interface Learning {
  /** Trip time after twice as many runs, as a factor: below 1 is quicker. */
  doubling: number
  interval95: [number, number]
  /** Field time to model time by the curve, at the first run. */
  first: number
}

/** A match or a run of practice. */
export interface FieldRun {
  /** Id of the match; of practice the first record's. */
  id: string
  kind: 'match' | 'practice'
  driver: string | null
  /** Which run of its driver, from 1. */
  number: number
  /** Put against the model, seen to their end. */
  trips: number
  cutOff: number
  /** Mean times (s); null where no trip was put against the model. */
  field: number | null
  model: number | null
}

export interface FieldDriver {
  /** Null: nobody noted who drove. */
  driver: string | null
  compared: Compared | null
  /** Null with fewer than four runs. */
  learning: Learning | null
}

export interface FieldReport {
  runs: FieldRun[]
  /** Trips put against the model: seen to their end, and cut off. */
  trips: number
  cutOff: number
  leftOut: { reason: LeftOutReason; trips: number }[]
  /** Trips of which nobody noted where the piece came from. */
  sourceUnknown: number
  /** Trips during some of which the robot was defended. */
  defended: number
  /** Null where no trip was seen to its end. */
  whole:
    | (Compared & {
        /** Kolmogorov–Smirnov distance, and how often the model itself lies at least so far off. */
        distance: number
        p: number
        /** Share of trips that outlast the longest one seen to its end. */
        beyond: number
      })
    | null
  /** Of the trips whose collecting was timed: the difference and what of it each half brings (s). Null where none was. */
  parts: { trips: number; difference: number; collecting: number; scoring: number } | null
  legs: FieldLeg[]
  drivers: FieldDriver[]
  /** The model’s distribution of the same trips: [seconds, share] by half seconds. */
  distribution: [number, number][]
  /** Each trip that was put against the model. */
  seen: { seconds: number; ended: boolean; run: number }[]
}
