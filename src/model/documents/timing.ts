/** One leg of a robot, wherever it begins. */
export type TimedLeg =
  | { kind: 'collect'; source: string }
  | { kind: 'score'; goal: string; entry: number }
  | { kind: 'finish'; finish: string }

/** What of the leg is timed: one stage of it, the whole leg, a repeated try of collecting, or a drive between two starts or spots. */
export type TimedPart =
  | { kind: 'stage'; stage: string }
  | { kind: 'whole' }
  | { kind: 'retry' }
  | { kind: 'drive'; from: string; to: string }

/** One measured time. */
export interface TimedTrial {
  id: string
  seconds: number
  /** When it ended, ISO 8601. */
  at: string
  /** Why it does not count; null: it counts. */
  struck: string | null
}

/**
 * Times of one part of a design taken on the practice field, those that were struck with the reason among them. The design
 * itself holds only the times that count.
 */
export interface TimingRecord {
  format: 1
  id: string
  name: string
  /** Id of the design. */
  design: string
  leg: TimedLeg
  part: TimedPart
  trials: TimedTrial[]
}
